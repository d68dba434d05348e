import type { XmlElement } from '@rgrove/parse-xml';
import { pdfNumber, pdfNumbers } from '../pdf/serialize.ts';
import { type Colour, colourOf } from './svg-colour.ts';

/** How a shape is painted; `none` is no paint. */
export interface SvgStyle {
  readonly fill: Colour | 'none';
  readonly stroke: Colour | 'none';
  readonly colour: Colour;
  readonly lineWidth: number;
  readonly cap: number;
  readonly join: number;
  readonly miter: number;
  readonly dash: readonly number[];
  readonly dashStart: number;
  readonly isEvenOdd: boolean;
  readonly fillOpacity: number;
  readonly strokeOpacity: number;
  /** Of the element and all around it. */
  readonly opacity: number;
  readonly isHidden: boolean;
  /** Why it cannot be painted as it is meant. */
  readonly trouble?: string;
}

/** What SVG starts from. */
export const initialStyle: SvgStyle = {
  fill: [0, 0, 0],
  stroke: 'none',
  colour: [0, 0, 0],
  lineWidth: 1,
  cap: 0,
  join: 0,
  miter: 4,
  dash: [],
  dashStart: 0,
  isEvenOdd: false,
  fillOpacity: 1,
  strokeOpacity: 1,
  opacity: 1,
  isHidden: false,
};

/** The style of an element within what it inherits; a `style` attribute goes before single attributes. */
export function styleOf({ attributes }: XmlElement, inherited: SvgStyle): SvgStyle {
  const own: Record<string, string> = { ...attributes };
  for (const rule of (attributes.style ?? '').split(';')) {
    const [key = '', ...value] = rule.split(':');
    if (value.length > 0) own[key.trim()] = value.join(':').replace('!important', '').trim();
  }
  const refused = ['filter', 'clip-path', 'mask', 'marker', 'marker-start', 'marker-mid', 'marker-end'].find(
    (key) => own[key] !== undefined && own[key] !== 'none',
  );
  const colour = paintOf(own.color, inherited.colour, inherited.colour);
  const base = colour === 'none' || colour === undefined ? inherited.colour : colour;
  const fill = paintOf(own.fill, inherited.fill, base);
  const stroke = paintOf(own.stroke, inherited.stroke, base);
  const unknown = fill === undefined ? own.fill : stroke === undefined ? own.stroke : undefined;
  const trouble =
    refused !== undefined
      ? `has a ${refused}, which is not printed`
      : unknown !== undefined
        ? `has the colour “${unknown}”, which is not printed; give it as #rrggbb`
        : undefined;
  return {
    fill: fill ?? 'none',
    stroke: stroke ?? 'none',
    colour: base,
    lineWidth: numberOf(own['stroke-width'], inherited.lineWidth),
    cap: placeOf(own['stroke-linecap'], ['butt', 'round', 'square'], inherited.cap),
    join: placeOf(own['stroke-linejoin'], ['miter', 'round', 'bevel'], inherited.join),
    miter: numberOf(own['stroke-miterlimit'], inherited.miter),
    dash: dashOf(own['stroke-dasharray'], inherited.dash),
    dashStart: numberOf(own['stroke-dashoffset'], inherited.dashStart),
    isEvenOdd: own['fill-rule'] === undefined ? inherited.isEvenOdd : own['fill-rule'] === 'evenodd',
    fillOpacity: shareOf(own['fill-opacity'], inherited.fillOpacity),
    strokeOpacity: shareOf(own['stroke-opacity'], inherited.strokeOpacity),
    opacity: inherited.opacity * shareOf(own.opacity, 1),
    isHidden: own.display === 'none' || own.visibility === 'hidden',
    ...(trouble === undefined ? {} : { trouble }),
  };
}

/** The operators that paint an outline, and the opacities they call. */
export function paintOperators(
  { fill, stroke, lineWidth, cap, join, miter, dash, dashStart, isEvenOdd, ...style }: SvgStyle,
  outline: string,
  opacities: Set<number>,
): readonly string[] {
  const operators: string[] = [];
  const withOpacity = (share: number): void => {
    const percent = Math.round(share * 100);
    opacities.add(percent);
    operators.push(`/A${percent} gs`);
  };
  const fillShare = style.opacity * style.fillOpacity;
  const strokeShare = style.opacity * style.strokeOpacity;
  const paintsFill = fill !== 'none' && fillShare > 0;
  const paintsStroke = stroke !== 'none' && lineWidth > 0 && strokeShare > 0;
  if (fill !== 'none') operators.push(`${pdfNumbers(...fill)} rg`);
  if (paintsStroke) {
    operators.push(`${pdfNumbers(...stroke)} RG ${pdfNumber(lineWidth)} w ${cap} J ${join} j`);
    operators.push(`${pdfNumber(Math.max(1, miter))} M [${pdfNumbers(...dash)}] ${pdfNumber(dashStart)} d`);
  }
  if (paintsFill && paintsStroke && fillShare === strokeShare) {
    if (fillShare < 1) withOpacity(fillShare);
    operators.push(outline, isEvenOdd ? 'B*' : 'B');
    return operators;
  }
  if (paintsFill) {
    if (fillShare < 1) withOpacity(fillShare);
    operators.push(outline, isEvenOdd ? 'f*' : 'f');
  }
  if (paintsStroke) {
    if (strokeShare < 1 || fillShare < 1) withOpacity(strokeShare);
    operators.push(outline, 'S');
  }
  return operators;
}

/** A paint; undefined for one that is not known. */
function paintOf(
  value: string | undefined,
  inherited: Colour | 'none',
  current: Colour,
): Colour | 'none' | undefined {
  if (value === undefined || value === 'inherit') return inherited;
  if (value === 'none' || value === 'transparent') return 'none';
  return value.toLowerCase() === 'currentcolor' ? current : colourOf(value);
}

function numberOf(value: string | undefined, inherited: number): number {
  const number = Number.parseFloat(value ?? '');
  return Number.isFinite(number) ? number : inherited;
}

function shareOf(value: string | undefined, inherited: number): number {
  const number = numberOf(value, inherited);
  return Math.min(1, Math.max(0, value?.trim().endsWith('%') === true ? number / 100 : number));
}

function placeOf(value: string | undefined, names: readonly string[], inherited: number): number {
  const place = value === undefined ? -1 : names.indexOf(value);
  return place === -1 ? inherited : place;
}

function dashOf(value: string | undefined, inherited: readonly number[]): readonly number[] {
  if (value === undefined) return inherited;
  const lengths = value.split(/[\s,]+/).map((length) => Number.parseFloat(length));
  return lengths.every((length) => length >= 0) && lengths.some((length) => length > 0) ? lengths : [];
}
