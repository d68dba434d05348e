import { escaped, short } from './markup.ts';

/** A picture of one figure along the year: a bar for each story, and where it helps a second figure as a mark above it. */
export interface Chart {
  /** What the bars are. */
  readonly title: string;
  /** Said to those who do not see the picture. */
  readonly description: string;
  readonly bars: readonly ChartBar[];
  /** The upper end of the scale; it begins at `least`. */
  readonly most: number;
  readonly least: number;
  /** What follows a figure on the scale: ` %`. */
  readonly unit: string;
}

/** One story in a chart. */
export interface ChartBar {
  /** The name of its lesson. */
  readonly label: string;
  /** What a pointer over the bar shows. */
  readonly hint: string;
  readonly value: number;
  /** A second figure, drawn as a line across: a target, or the longest sentence. */
  readonly mark?: number;
  /** True to set the bar off, by its pattern and a sign below it. */
  readonly fallsShort: boolean;
}

const width = 960;
const height = 170;
const left = 46;
const top = 10;
const bottom = 26;

/** Draws a chart as inline SVG that needs nothing from elsewhere; its colours are classes of the page. */
export function chartSvg(chart: Chart, id: string): string {
  const { title, description, bars, most, least, unit } = chart;
  const span = most - least || 1;
  const floor = height - bottom;
  const y = (value: number): number =>
    floor - ((Math.min(Math.max(value, least), most) - least) / span) * (floor - top);
  const step = (width - left) / Math.max(1, bars.length);
  const wide = Math.min(28, step * 0.72);
  const every = Math.ceil(bars.length / 48);
  const lines = scaleOf(least, most).map(
    (value) =>
      `<line class="grid" x1="${left}" x2="${width}" y1="${short(y(value))}" y2="${short(y(value))}"/>` +
      `<text class="scale" x="${left - 6}" y="${short(y(value) + 4)}" text-anchor="end">${short(value)}${escaped(unit)}</text>`,
  );
  const drawn = bars.map((bar, index) => {
    const x = left + step * index + (step - wide) / 2;
    const above = y(bar.value);
    const mark =
      bar.mark === undefined
        ? ''
        : `<line class="mark" x1="${short(x - 3)}" x2="${short(x + wide + 3)}" y1="${short(y(bar.mark))}" y2="${short(y(bar.mark))}"/>`;
    const label =
      index % every === 0
        ? `<text class="label" x="${short(x + wide / 2)}" y="${floor + 14}" text-anchor="middle">${escaped(bar.label)}</text>`
        : '';
    const sign = bar.fallsShort
      ? `<text class="sign" x="${short(x + wide / 2)}" y="${floor + 24}" text-anchor="middle">✕</text>`
      : '';
    const look = bar.fallsShort ? 'bar short' : 'bar';
    return `<g><title>${escaped(bar.hint)}</title><rect class="${look}" x="${short(x)}" y="${short(above)}" width="${short(wide)}" height="${short(Math.max(0.5, floor - above))}"/>${mark}${label}${sign}</g>`;
  });
  return `<svg role="img" aria-labelledby="${id}-title ${id}-text" viewBox="0 0 ${width} ${height}" preserveAspectRatio="xMinYMin meet">
<title id="${id}-title">${escaped(title)}</title><desc id="${id}-text">${escaped(description)}</desc>
${lines.join('')}
${drawn.join('\n')}
<line class="axis" x1="${left}" x2="${width}" y1="${floor}" y2="${floor}"/>
</svg>`;
}

/** Three to six round figures from end to end of a scale. */
export function scaleOf(least: number, most: number): readonly number[] {
  const span = most - least;
  if (span <= 0) return [least];
  const step = roundSteps.find((each) => span / each <= 5) ?? span / 4;
  const figures: number[] = [];
  for (let value = Math.ceil(least / step) * step; value <= most + 1e-9; value += step) figures.push(value);
  return figures;
}

const roundSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/** The end of a scale that holds a figure: the next multiple of a round step. */
export function roundedUp(figure: number): number {
  const step = roundSteps.find((each) => figure / each <= 5) ?? 10_000;
  return Math.max(step, Math.ceil(figure / step) * step);
}
