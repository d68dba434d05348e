import type { FitAnswer } from '../../../../server/src/editor/workshop/protocol.ts';
import { shownShare } from '../../../../server/src/review/figures.ts';
import { append } from '../../view/dom.ts';
import { fitCurve, fitSummary } from '../models.ts';
import { ask, listen, messageOf } from './editor.ts';
import { appendStatus } from './form.ts';

const width = 300;
const height = 100;

/** A text against every lesson. */
export function showFit(main: Element): void {
  const label = append(main, 'label', 'pasted', 'Pasted text; without it the text in the editor');
  const pasted = append(label, 'textarea');
  pasted.rows = 3;
  const status = appendStatus(main);
  const result = append(main, 'div', 'fit');
  const draw = (answer: unknown): void => {
    const message = messageOf(answer);
    result.replaceChildren();
    if (message !== undefined) {
      status.textContent = message;
      return;
    }
    const fit = answer as FitAnswer;
    status.textContent = fitSummary(fit);
    appendCurve(result, fit);
    appendHeldBack(result, fit);
    appendTable(result, fit);
  };
  const find = (): void => ask({ text: pasted.value.trim() === '' ? undefined : pasted.value }, draw);
  pasted.addEventListener('input', find);
  listen(find);
}

function appendCurve(parent: Element, fit: FitAnswer): void {
  const svg = drawn(parent, 'svg', {
    viewBox: `-4 -4 ${width + 8} ${height + 8}`,
    role: 'img',
    class: 'curve',
  });
  svg.setAttribute('aria-label', `Readable share by lesson. ${fitSummary(fit)} The table has the figures.`);
  const { readable, target } = fitCurve(fit.lessons, width, height);
  drawn(svg, 'polyline', { points: `0,0 0,${height} ${width},${height}`, class: 'axis' });
  drawn(svg, 'polyline', { points: target, class: 'target' });
  drawn(svg, 'polyline', { points: readable, class: 'share' });
  append(parent, 'p', 'legend', 'Thick line: readable words, from 0 to 100 %. Dashed line: the target.');
}

function appendHeldBack(parent: Element, { heldBack }: FitAnswer): void {
  if (heldBack === undefined) return;
  const { things, declared, never } = heldBack;
  if (things.length + declared.length + never.length === 0) return;
  append(
    parent,
    'h2',
    '',
    `What holds it back at lesson ${heldBack.lesson}, ${shownShare(heldBack.readable)}`,
  );
  const list = append(parent, 'ul', 'things');
  for (const { label, rise, words } of things) {
    const gain = rise > 0 ? ` +${shownShare(rise)}` : '';
    append(list, 'li', '', `${label}${gain}: ${words.join(', ')}`);
  }
  if (never.length > 0) append(list, 'li', '', `Readable at no lesson: ${never.join(', ')}`);
  if (declared.length > 0)
    append(list, 'li', '', `Names and story words count in the whole only: ${declared.join(', ')}`);
}

function appendTable(parent: Element, { lessons }: FitAnswer): void {
  const table = append(parent, 'table');
  append(table, 'caption', '', 'Readable words by lesson');
  const head = append(append(table, 'thead'), 'tr');
  for (const name of ['Lesson', 'Readable', 'Target']) append(head, 'th', '', name);
  append(append(head, 'th'), 'span', 'spoken', 'Whether the target is reached');
  const body = append(table, 'tbody');
  for (const { name, readable, target, reaches } of lessons) {
    const row = append(body, 'tr');
    append(row, 'th', '', name).scope = 'row';
    append(row, 'td', '', shownShare(readable));
    append(row, 'td', '', shownShare(target));
    append(row, 'td', '', reaches ? '✓ reached' : 'short');
  }
}

function drawn(parent: Element, tag: string, attributes: Readonly<Record<string, string>>): Element {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  parent.append(element);
  return element;
}
