import type { Item, ListModel } from '../gauge/model.ts';
import { moveByArrowKeys } from './arrow-keys.ts';
import { append, setAttribute, setShown, setText } from './dom.ts';
import { keyedRows, type Row } from './keyed-rows.ts';
import type { Places } from './places.ts';
import { appendSection } from './section.ts';

/**
 * A section with a list of things, each a button that leads to its places.
 *
 * @returns a function that brings it to a new model.
 */
export function appendItemList(
  parent: Element,
  id: string,
  title: string,
  places: Places,
): (model: ListModel) => void {
  const section = appendSection(parent, id, title);
  const list = append(section.body, 'ul', 'items');
  list.setAttribute('aria-labelledby', id);
  const settle = moveByArrowKeys(list);
  const updateRows = keyedRows<Item>(list, section.heading, () => createRow(id, places));
  return (model) => {
    section.update(model);
    setShown(list, model.items.length > 0);
    updateRows(model.items);
    settle();
  };
}

function createRow(listId: string, places: Places): Row<Item> {
  const element = document.createElement('li');
  const button = append(element, 'button', 'item');
  button.type = 'button';
  const label = append(button, 'span', 'label');
  const beforeFigure = append(button, 'span', 'spoken');
  const dots = append(button, 'span', 'dots');
  dots.setAttribute('aria-hidden', 'true');
  const figure = append(button, 'span', 'figure');
  const beforeDetail = append(button, 'span', 'spoken');
  const detail = append(button, 'span', 'detail');
  let shown: Item | undefined;
  button.addEventListener('click', () => {
    if (shown !== undefined) places.showNext(`${listId} ${shown.key}`, shown.places);
  });
  return {
    element,
    update(item) {
      shown = item;
      setText(label, item.label);
      setText(beforeFigure, item.figure === '' ? '' : ', ');
      setText(figure, item.figure);
      setText(beforeDetail, item.detail === '' ? '' : ', ');
      setText(detail, item.detail);
      setShown(detail, item.detail !== '');
      setAttribute(button, 'aria-disabled', item.places.length === 0 ? 'true' : undefined);
      setAttribute(element, 'class', item.state);
      updateDots(dots, item.dots);
    },
  };
}

function updateDots(element: HTMLElement, { filled, empty }: Item['dots']): void {
  while (element.childElementCount > filled + empty) element.lastElementChild?.remove();
  while (element.childElementCount < filled + empty) append(element, 'span');
  [...element.children].forEach((dot, index) => {
    setAttribute(dot, 'class', index < filled ? 'dot' : 'dot empty');
  });
}
