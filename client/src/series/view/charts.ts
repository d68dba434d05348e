import { append } from '../../view/dom.ts';
import type { ChartModel } from '../model.ts';

const height = 100;
/** A bar with its gap, in units of the picture. */
const step = 10;
const thickness = 7;

/** The pictures of the year. A click on a bar opens its story; the keyboard has the table below for that. */
export function appendCharts(
  parent: Element,
  open: (uri: string) => void,
): (charts: readonly ChartModel[]) => void {
  const list = append(parent, 'div', 'charts');
  let shown: readonly ChartModel[] = [];
  list.addEventListener('click', ({ target }) => {
    if (!(target instanceof SVGElement)) return;
    const uri = shown[Number(target.dataset.chart)]?.bars[Number(target.dataset.bar)]?.uri;
    if (uri !== undefined) open(uri);
  });
  return (charts) => {
    shown = charts;
    list.replaceChildren();
    for (const [index, chart] of charts.entries()) appendChart(list, chart, index);
  };
}

function appendChart(
  list: Element,
  { title, description, least, most, unit, bars }: ChartModel,
  index: number,
): void {
  const figure = append(list, 'figure');
  const caption = append(figure, 'figcaption', '', title);
  append(caption, 'span', 'quiet', ` ${description}`);
  const frame = append(figure, 'div', 'frame');
  append(frame, 'span', 'scale most', `${Math.round(most)}${unit}`);
  append(frame, 'span', 'scale least', `${Math.round(least)}${unit}`);
  const width = Math.max(1, bars.length) * step;
  const svg = drawn(frame, 'svg', {
    viewBox: `0 0 ${width} ${height}`,
    preserveAspectRatio: 'none',
    role: 'img',
    'aria-label': `${title} by story. ${description} The table of stories has the figures.`,
  });
  const heightOf = (value: number): number =>
    Math.max(0, Math.min(1, (value - least) / Math.max(1e-9, most - least))) * height;
  for (const [at, { value, mark, fallsShort, hint }] of bars.entries()) {
    const x = at * step + (step - thickness) / 2;
    const tall = Math.max(1, heightOf(value));
    drawn(svg, 'rect', {
      x,
      y: height - tall,
      width: thickness,
      height: tall,
      class: fallsShort ? 'bar short' : 'bar',
    });
    if (mark !== undefined) {
      const y = height - heightOf(mark);
      drawn(svg, 'line', { x1: at * step, x2: (at + 1) * step, y1: y, y2: y, class: 'mark' });
    }
    const column = drawn(svg, 'rect', { x: at * step, y: 0, width: step, height, class: 'column' });
    column.dataset.chart = String(index);
    column.dataset.bar = String(at);
    drawn(column, 'title', {}).textContent = hint;
  }
}

function drawn(
  parent: Element,
  tag: string,
  attributes: Readonly<Record<string, string | number>>,
): SVGElement {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag) as SVGElement;
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  parent.append(element);
  return element;
}
