import type { ItemState } from '../gauge/model.ts';
import { append, setShown, setText } from './dom.ts';
import { appendStateIcon } from './icons.ts';

/** A part of the gauge with its heading and a sentence that sums it up. */
export interface Section {
  readonly element: HTMLElement;
  /** Can take the focus when what had it is gone. */
  readonly heading: HTMLElement;
  /** Where the part's own drawing goes. */
  readonly body: HTMLElement;
  update(part: { readonly summary: string; readonly state: ItemState; readonly more: string }): void;
}

/** Makes a section as the last child of `parent`. */
export function appendSection(parent: Element, id: string, title: string): Section {
  const element = append(parent, 'section');
  const heading = append(element, 'h2', '', title);
  heading.id = id;
  heading.tabIndex = -1;
  element.setAttribute('aria-labelledby', id);
  const line = append(element, 'p', 'summary');
  const icon = appendStateIcon(line);
  const summary = append(line, 'span');
  const body = append(element, 'div');
  const more = append(element, 'p', 'more');
  return {
    element,
    heading,
    body,
    update(part) {
      icon.update(part.state);
      setText(summary, part.summary);
      setText(more, part.more);
      setShown(more, part.more !== '');
    },
  };
}
