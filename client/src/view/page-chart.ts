import type { PagesModel } from '../gauge/model.ts';
import { moveByArrowKeys } from './arrow-keys.ts';
import { append, setAttribute, setShare, setShown, setText } from './dom.ts';
import { keyedRows, type Row } from './keyed-rows.ts';
import type { Places } from './places.ts';
import { appendSection } from './section.ts';
import { appendSegments } from './segments.ts';

type PageRow = PagesModel['pages'][number] & { readonly limit: number };

/**
 * The pages as rows: their words by kind, with a line at the limit.
 *
 * @returns a function that brings it to a new model.
 */
export function appendPageChart(parent: Element, places: Places): (model: PagesModel) => void {
  const section = appendSection(parent, 'pages', 'Pages');
  const legend = append(section.body, 'p', 'legend');
  append(legend, 'span', 'limit-sample').setAttribute('aria-hidden', 'true');
  const limitText = append(legend, 'span');
  const list = append(section.body, 'ol', 'pages');
  list.setAttribute('aria-labelledby', 'pages');
  const settle = moveByArrowKeys(list);
  const updateRows = keyedRows<PageRow>(list, section.heading, () => createRow(places));
  return (model) => {
    section.update(model);
    setText(limitText, model.limitText);
    setShown(legend, model.pages.length > 0);
    setShown(list, model.pages.length > 0);
    updateRows(model.pages.map((page) => ({ ...page, limit: model.limit })));
    settle();
  };
}

function createRow(places: Places): Row<PageRow> {
  const element = document.createElement('li');
  const button = append(element, 'button', 'page');
  button.type = 'button';
  const label = append(button, 'span', 'label');
  append(button, 'span', 'spoken', ', ');
  const figure = append(button, 'span', 'figure');
  const readable = append(button, 'span', 'spoken');
  const chart = append(button, 'span', 'page-chart');
  const updateSegments = appendSegments(chart);
  const limit = append(chart, 'span', 'page-limit');
  let shown: PageRow | undefined;
  button.addEventListener('click', () => {
    if (shown !== undefined) places.showStretch(shown.place);
  });
  return {
    element,
    update(page) {
      shown = page;
      setAttribute(element, 'class', page.over ? 'over' : undefined);
      setText(label, page.label);
      setText(figure, page.figure);
      setText(readable, page.readable === '' ? '' : `, ${page.readable}`);
      updateSegments(page.segments);
      setShare(limit, 'left', page.limit);
    },
  };
}
