import type { ColumnsModel } from '../gauge/model.ts';
import { moveByArrowKeys } from './arrow-keys.ts';
import { append, setAttribute, setShare, setShown, setText } from './dom.ts';
import { keyedRows, type Row } from './keyed-rows.ts';
import type { Places } from './places.ts';
import { appendSection } from './section.ts';

type Column = ColumnsModel['columns'][number] & { readonly limit: number };

/**
 * The sentences as columns in the order of the text, with a line at the limit; they run on in a new row like text.
 *
 * @returns a function that brings it to a new model.
 */
export function appendSentenceChart(parent: Element, places: Places): (model: ColumnsModel) => void {
  const section = appendSection(parent, 'sentences', 'Sentences');
  const legend = append(section.body, 'p', 'legend');
  append(legend, 'span', 'limit-sample').setAttribute('aria-hidden', 'true');
  const limitText = append(legend, 'span');
  const list = append(section.body, 'ol', 'columns');
  list.setAttribute('aria-labelledby', 'sentences');
  const settle = moveByArrowKeys(list);
  const updateRows = keyedRows<Column>(list, section.heading, () => createColumn(places));
  return (model) => {
    section.update(model);
    setText(limitText, model.limitText);
    setShown(legend, model.columns.length > 0);
    setShown(list, model.columns.length > 0);
    updateRows(model.columns.map((column) => ({ ...column, limit: model.limit })));
    settle();
  };
}

function createColumn(places: Places): Row<Column> {
  const element = document.createElement('li');
  const button = append(element, 'button', 'column');
  button.type = 'button';
  const chart = append(button, 'span', 'column-chart');
  const bar = append(chart, 'span', 'column-bar');
  const limit = append(chart, 'span', 'column-limit');
  const number = append(button, 'span', 'column-number');
  let shown: Column | undefined;
  button.addEventListener('click', () => {
    if (shown !== undefined) places.showStretch(shown.place);
  });
  return {
    element,
    update(column) {
      shown = column;
      setAttribute(element, 'class', column.over ? 'over' : undefined);
      setAttribute(button, 'aria-label', column.description);
      setAttribute(button, 'title', column.description);
      setText(number, String(column.words));
      setShare(bar, 'height', column.height);
      setShare(limit, 'bottom', column.limit);
    },
  };
}
