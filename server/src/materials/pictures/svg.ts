import { parseXml, XmlElement } from '@rgrove/parse-xml';
import { strFromU8 } from 'fflate';
import { pdfNumbers } from '../pdf/serialize.ts';
import type { PictureRead } from './picture.ts';
import { shapePath } from './svg-shapes.ts';
import { initialStyle, paintOperators, type SvgStyle, styleOf } from './svg-style.ts';
import { type Matrix, transformOf } from './svg-transform.ts';

/**
 * Reads an SVG drawing: groups, `use`, paths and the basic shapes with plain colours, strokes, opacity and transforms.
 * What else would be seen (text, pictures, gradients, patterns, filters, clips, masks, style sheets) is not drawn
 * half: the drawing is refused and the thing named. Throws when it is not well-formed XML.
 */
export function readSvg(bytes: Uint8Array): PictureRead {
  const text = strFromU8(bytes).replace(/^\ufeff/, '');
  if (isTooDeep(text)) return { trouble: endless };
  const { root } = parseXml(text);
  if (root === null || root.name !== 'svg') return { trouble: 'is not an SVG drawing' };
  const size = sizeOf(root);
  if (size === undefined) {
    return { trouble: 'says nothing of its size; give its svg element a viewBox, or a width and a height' };
  }
  const drawing: Drawing = { operators: [], opacities: new Set(), byId: idsOf(root), depth: 0 };
  const { left, top, width, height } = size;
  drawing.operators.push(`1 0 0 -1 ${pdfNumbers(-left, top + height)} cm`);
  const trouble = drawChildren(root, styleOf(root, initialStyle), drawing);
  if (trouble !== undefined) return { trouble };
  return {
    kind: 'vector',
    width,
    height,
    operators: drawing.operators.join('\n'),
    opacities: [...drawing.opacities].sort((one, other) => one - other),
  };
}

interface Drawing {
  readonly operators: string[];
  /** In percent. */
  readonly opacities: Set<number>;
  readonly byId: ReadonlyMap<string, XmlElement>;
  depth: number;
}

/** Elements that are not seen where they stand. */
const unseen = new Set(['title', 'desc', 'metadata', 'defs', 'symbol']);
const mostDepth = 50;
const endless = 'has groups in groups without end';

/**
 * True when elements stand in elements deeper than any drawing has them. The reader of XML calls itself for every level, and
 * near the end of the stack V8 may end the process instead of throwing.
 */
function isTooDeep(text: string): boolean {
  let depth = 0;
  for (let at = text.indexOf('<'); at !== -1; at = text.indexOf('<', at)) {
    const end = text.indexOf('>', at);
    if (end === -1) return false;
    if (text[at + 1] === '/') depth--;
    else if (text[end - 1] !== '/' && /[^!?]/.test(text[at + 1] ?? '')) depth++;
    if (depth > 10 * mostDepth) return true;
    at = end;
  }
  return false;
}

/** Draws what an element holds; gives what cannot be drawn, if anything. */
function drawChildren(parent: XmlElement, style: SvgStyle, drawing: Drawing): string | undefined {
  for (const child of parent.children) {
    if (!(child instanceof XmlElement) || unseen.has(child.name) || child.name.includes(':')) continue;
    const trouble = drawElement(child, style, drawing);
    if (trouble !== undefined) return trouble;
  }
  return undefined;
}

function drawElement(element: XmlElement, inherited: SvgStyle, drawing: Drawing): string | undefined {
  const style = styleOf(element, inherited);
  if (style.isHidden) return undefined;
  if (style.trouble !== undefined) return style.trouble;
  const matrix = transformOf(element.attributes.transform ?? '');
  if (matrix === undefined) return `has a transform that cannot be read: ${element.attributes.transform}`;
  if (++drawing.depth > mostDepth) return endless;
  drawing.operators.push('q');
  if (!isIdentity(matrix)) drawing.operators.push(`${matrix.map((value) => fine(value)).join(' ')} cm`);
  const trouble = drawContent(element, style, drawing);
  drawing.operators.push('Q');
  drawing.depth--;
  return trouble;
}

function drawContent(element: XmlElement, style: SvgStyle, drawing: Drawing): string | undefined {
  if (element.name === 'g' || element.name === 'a') return drawChildren(element, style, drawing);
  if (element.name === 'use') {
    const name = (element.attributes.href ?? element.attributes['xlink:href'] ?? '').replace(/^#/, '');
    const target = drawing.byId.get(name);
    if (target === undefined) return `uses “${name}”, which is not in it`;
    const { x = '0', y = '0' } = element.attributes;
    drawing.operators.push(`1 0 0 1 ${pdfNumbers(Number.parseFloat(x), Number.parseFloat(y))} cm`);
    return target.name === 'symbol'
      ? drawChildren(target, style, drawing)
      : drawElement(target, style, drawing);
  }
  const path = shapePath(element);
  if (path === undefined)
    return `has the element “${element.name}”, which is not printed; turn it into paths`;
  if ('trouble' in path) return path.trouble;
  if (path.operators === '') return undefined;
  drawing.operators.push(...paintOperators(style, path.operators, drawing.opacities));
  return undefined;
}

/** More decimals than lengths need: small factors scale large drawings. */
function fine(value: number): string {
  return String(Math.round(value * 1e6) / 1e6).replace(/^-?\d(?:\.\d+)?e-.*$/, '0');
}

function isIdentity(matrix: Matrix): boolean {
  return matrix.join(' ') === '1 0 0 1 0 0';
}

function idsOf(root: XmlElement): ReadonlyMap<string, XmlElement> {
  const found = new Map<string, XmlElement>();
  const waiting = [root];
  for (let element = waiting.pop(); element !== undefined; element = waiting.pop()) {
    const { id } = element.attributes;
    if (id !== undefined && !found.has(id)) found.set(id, element);
    for (const child of element.children) if (child instanceof XmlElement) waiting.push(child);
  }
  return found;
}

function sizeOf({ attributes }: XmlElement) {
  const box = (attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [left, top, width, height] = box;
  if (box.length === 4 && box.every(Number.isFinite) && (width ?? 0) > 0 && (height ?? 0) > 0) {
    return { left: left ?? 0, top: top ?? 0, width: width ?? 0, height: height ?? 0 };
  }
  const own = {
    width: Number.parseFloat(attributes.width ?? ''),
    height: Number.parseFloat(attributes.height ?? ''),
  };
  return own.width > 0 && own.height > 0 ? { left: 0, top: 0, ...own } : undefined;
}
