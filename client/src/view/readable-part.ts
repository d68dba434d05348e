import type { GaugeModel, KindRow } from '../gauge/model.ts';
import { append, setAttribute, setShare, setShown, setText } from './dom.ts';
import { post } from './editor.ts';
import { appendStateIcon } from './icons.ts';
import { keyedRows, type Row } from './keyed-rows.ts';
import { appendSegments } from './segments.ts';

/**
 * The figure that matters most: how much of the text the children can read, against the target, and of what kinds the
 * words are.
 *
 * @returns a function that brings it to a new model.
 */
export function appendReadablePart(parent: Element): (model: GaugeModel) => void {
  const section = append(parent, 'section', 'readable');
  const heading = append(section, 'h2', '', 'Readable words');
  heading.id = 'readable';
  section.setAttribute('aria-labelledby', 'readable');
  const figure = append(section, 'p', 'headline');
  const verdictLine = append(section, 'p', 'verdict');
  const icon = appendStateIcon(verdictLine);
  const verdict = append(verdictLine, 'span');
  const updateBar = appendTargetBar(section);
  const updateTable = appendKindTable(section, heading);
  const findings = append(section, 'button', 'link');
  findings.type = 'button';
  findings.addEventListener('click', () => post({ type: 'problems' }));
  return (model) => {
    const { readable } = model;
    setText(figure, readable.figure);
    setText(verdict, readable.verdict);
    icon.update(readable.state === 'reached' ? 'met' : readable.state === 'under' ? 'short' : 'none');
    updateBar(model);
    updateTable(model);
    setText(findings, readable.findings);
    setShown(findings, readable.hasFindings);
  };
}

function appendTargetBar(parent: Element): (model: GaugeModel) => void {
  const bar = append(parent, 'div', 'target-bar');
  bar.setAttribute('role', 'img');
  const flag = append(bar, 'span', 'flag');
  const track = append(bar, 'span', 'track');
  const updateSegments = appendSegments(track);
  const line = append(bar, 'span', 'target-line');
  return ({ readable }) => {
    setAttribute(bar, 'aria-label', readable.description);
    updateSegments(readable.segments);
    setText(flag, `target ${readable.targetText}`);
    // The flag's text hangs on the side of the line that has room for it.
    const hangsLeft = readable.target >= 0.5;
    setAttribute(flag, 'class', hangsLeft ? 'flag hangs-left' : 'flag');
    setShare(flag, hangsLeft ? 'right' : 'left', hangsLeft ? 1 - readable.target : readable.target);
    if (hangsLeft) flag.style.left = '';
    else flag.style.right = '';
    setShare(line, 'left', readable.target);
  };
}

function appendKindTable(parent: Element, heading: HTMLElement): (model: GaugeModel) => void {
  const table = append(parent, 'table', 'kinds');
  append(table, 'caption', 'spoken', 'Running words by kind');
  const head = append(append(table, 'thead', 'spoken'), 'tr');
  for (const title of ['Kind', 'Words', 'Share']) append(head, 'th', '', title).scope = 'col';
  const body = append(table, 'tbody');
  const updateRows = keyedRows<KindRow & { readonly key: string }>(body, heading, createKindRow);
  return ({ kinds }) => updateRows(kinds.map((row) => ({ ...row, key: row.kind })));
}

function createKindRow(): Row<KindRow> {
  const element = document.createElement('tr');
  const label = append(element, 'th');
  label.scope = 'row';
  const swatch = append(label, 'span');
  swatch.setAttribute('aria-hidden', 'true');
  const text = append(label, 'span');
  const count = append(element, 'td');
  const share = append(element, 'td');
  return {
    element,
    update(row) {
      setAttribute(swatch, 'class', `swatch segment ${row.kind}`);
      setText(text, row.label);
      setText(count, row.count);
      setText(share, row.share);
    },
  };
}
