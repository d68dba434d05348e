import { append } from '../../view/dom.ts';

/** A field with its label. */
export function appendField(parent: Element, label: string, hint = ''): HTMLInputElement {
  const row = append(parent, 'label', 'field', label);
  const input = append(row, 'input');
  input.placeholder = hint;
  input.spellcheck = false;
  return input;
}

/** A choice with its label; each option is a value and what is shown. */
export function appendChoice(
  parent: Element,
  label: string,
  options: readonly (readonly [value: string, shown: string])[],
): HTMLSelectElement {
  const select = append(append(parent, 'label', 'field', label), 'select');
  for (const [value, shown] of options) append(select, 'option', '', shown).value = value;
  return select;
}

/** A button. */
export function appendButton(parent: Element, className: string, label: string): HTMLButtonElement {
  const button = append(parent, 'button', className, label);
  button.type = 'button';
  return button;
}

/** A sentence that screen readers say when it changes. */
export function appendStatus(parent: Element): HTMLElement {
  const status = append(parent, 'p', 'status');
  status.setAttribute('role', 'status');
  return status;
}
