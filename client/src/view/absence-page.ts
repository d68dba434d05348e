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
  const buttons = append(parent, 'div', 'buttons');
  let shown: AbsenceModel | undefined;
  return (model) => {
    if (JSON.stringify(model) === JSON.stringify(shown)) return;
    shown = model;
    setText(title, model.title);
    text.replaceChildren();
    for (const paragraph of model.paragraphs) append(text, 'p', '', paragraph);
    setText(example, model.example);
    setShown(example, model.example !== '');
    buttons.replaceChildren();
    for (const { label, message } of model.buttons) {
      const button = append(buttons, 'button', 'primary', label);
      button.type = 'button';
      button.addEventListener('click', () => post({ type: message }));
    }
  };
}
