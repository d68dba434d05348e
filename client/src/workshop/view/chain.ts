import type { ChainAnswer } from '../../../../server/src/editor/workshop/protocol.ts';
import { append } from '../../view/dom.ts';
import { chainNote, chainSummary, stepLabel, stretchesOf } from '../models.ts';
import { ask, listen, messageOf, post } from './editor.ts';
import { appendButton, appendField, appendStatus } from './form.ts';

/** Word-building chains. */
export function showChain(main: Element): void {
  const form = append(main, 'form', 'fields');
  const length = appendField(form, 'Words');
  length.type = 'number';
  length.min = '2';
  length.max = '40';
  length.value = '8';
  const start = appendField(form, 'First word', 'any');
  const buttons = append(main, 'div', 'buttons');
  const make = appendButton(buttons, 'primary', 'Make Chain');
  const next = appendButton(buttons, 'primary', 'Another');
  const insert = appendButton(buttons, 'primary', 'Insert as Note');
  const status = appendStatus(main);
  const list = append(main, 'ol', 'chain');
  let seed = 1;
  let chain: ChainAnswer | undefined;

  const draw = (answer: unknown): void => {
    const message = messageOf(answer);
    chain = message === undefined ? (answer as ChainAnswer) : undefined;
    status.textContent = message ?? (chain ? chainSummary(chain) : '');
    // The field says what was made of the wish, but not while somebody writes in it.
    if (chain !== undefined && document.activeElement !== length) length.value = String(chain.length);
    list.replaceChildren();
    for (const link of chain?.links ?? []) {
      const row = append(list, 'li');
      const word = append(row, 'span', 'link-word');
      for (const { text, isChanged } of stretchesOf(link))
        append(word, isChanged ? 'mark' : 'span', '', text);
      append(row, 'span', 'step', stepLabel(link));
    }
    insert.disabled = (chain?.links.length ?? 0) < 2;
  };
  const find = (): void =>
    ask({ length: Number(length.value) || 8, start: start.value.trim() || undefined, seed }, draw);
  make.addEventListener('click', find);
  next.addEventListener('click', () => {
    seed++;
    find();
  });
  insert.disabled = true;
  insert.addEventListener('click', () => {
    if (chain !== undefined) post({ type: 'insert-note', text: chainNote(chain) });
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    find();
  });
  listen(() => undefined);
}
