import type { AbsenceModel } from '../gauge/absence.ts';
import { append, setShown, setText } from './dom.ts';
import { post } from './editor.ts';

/**
 * What is shown when there is no gauge.
 *
 * @returns a function that brings it to a new model.
 */
export function appendAbsencePage(parent: Element): (model: AbsenceModel) => void {
  const title = append(parent, 'h1');
  const text = append(parent, 'div');
  const example = append(parent, 'pre');
  const button = append(parent, 'button', 'primary');
  button.type = 'button';
  let shown: AbsenceModel | undefined;
  button.addEventListener('click', () => {
    if (shown?.button !== undefined) post({ type: shown.button.message });
  });
  return (model) => {
    if (JSON.stringify(model) === JSON.stringify(shown)) return;
    shown = model;
    setText(title, model.title);
    text.replaceChildren();
    for (const paragraph of model.paragraphs) append(text, 'p', '', paragraph);
    setText(example, model.example);
    setShown(example, model.example !== '');
    setText(button, model.button?.label ?? '');
    setShown(button, model.button !== undefined);
  };
}
