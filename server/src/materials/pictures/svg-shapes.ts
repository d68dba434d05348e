import type { XmlElement } from '@rgrove/parse-xml';
import svgpath from 'svgpath';
import { pdfNumbers } from '../pdf/serialize.ts';

/** The outline of a basic shape or path as PDF operators; undefined for an element that is no shape. */
export function shapePath({
  name,
  attributes,
}: XmlElement): { operators: string } | { trouble: string } | undefined {
  const number = (key: string): number => Number.parseFloat(attributes[key] ?? '0') || 0;
  switch (name) {
    case 'path':
      return pathOperators(attributes.d ?? '');
    case 'rect':
      return pathOperators(rectanglePath(attributes, number));
    case 'circle':
      return pathOperators(ellipsePath(number('cx'), number('cy'), number('r'), number('r')));
    case 'ellipse':
      return pathOperators(ellipsePath(number('cx'), number('cy'), number('rx'), number('ry')));
    case 'line':
      return pathOperators(`M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`);
    case 'polyline':
    case 'polygon': {
      const points = (attributes.points ?? '').trim();
      return pathOperators(points === '' ? '' : `M${points}${name === 'polygon' ? 'Z' : ''}`);
    }
    default:
      return undefined;
  }
}

function rectanglePath(attributes: XmlElement['attributes'], number: (key: string) => number): string {
  const [x, y, width, height] = [number('x'), number('y'), number('width'), number('height')];
  if (width <= 0 || height <= 0) return '';
  const across = Math.min(attributes.rx === undefined ? number('ry') : number('rx'), width / 2);
  const down = Math.min(attributes.ry === undefined ? number('rx') : number('ry'), height / 2);
  if (across <= 0 || down <= 0) return `M${x} ${y}h${width}v${height}h${-width}Z`;
  const arc = `a${across} ${down} 0 0 1 `;
  return `M${x + across} ${y}h${width - 2 * across}${arc}${across} ${down}v${height - 2 * down}${arc}${-across} ${down}h${2 * across - width}${arc}${-across} ${-down}v${2 * down - height}${arc}${across} ${-down}Z`;
}

function ellipsePath(x: number, y: number, across: number, down: number): string {
  if (across <= 0 || down <= 0) return '';
  return `M${x - across} ${y}a${across} ${down} 0 1 0 ${2 * across} 0a${across} ${down} 0 1 0 ${-2 * across} 0Z`;
}

function pathOperators(path: string): { operators: string } | { trouble: string } {
  const parsed = svgpath(path);
  const { err } = parsed as unknown as { readonly err: string };
  if (err) return { trouble: `has a path that cannot be read: “${path.slice(0, 40)}”` };
  const operators: string[] = [];
  parsed
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _index, x, y) => {
      switch (segment[0]) {
        case 'M':
          operators.push(`${pdfNumbers(segment[1], segment[2])} m`);
          break;
        case 'L':
          operators.push(`${pdfNumbers(segment[1], segment[2])} l`);
          break;
        case 'H':
          operators.push(`${pdfNumbers(segment[1], y)} l`);
          break;
        case 'V':
          operators.push(`${pdfNumbers(x, segment[1])} l`);
          break;
        case 'C':
          operators.push(`${pdfNumbers(...segment.slice(1).map(Number))} c`);
          break;
        case 'Q': {
          const [, x1, y1, x2, y2] = segment;
          const controls = [
            x + (2 / 3) * (x1 - x),
            y + (2 / 3) * (y1 - y),
            x2 + (2 / 3) * (x1 - x2),
            y2 + (2 / 3) * (y1 - y2),
          ];
          operators.push(`${pdfNumbers(...controls, x2, y2)} c`);
          break;
        }
        case 'Z':
        case 'z':
          operators.push('h');
          break;
      }
    });
  return { operators: operators.join('\n') };
}
