/** Six numbers that move, turn and scale, as SVG and PDF order them. */
export type Matrix = readonly [number, number, number, number, number, number];

const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** Longer ones are no transforms that anybody draws with. */
const longestAttribute = 5000;

/** Reads a `transform` attribute; undefined when it is not one. */
export function transformOf(attribute: string): Matrix | undefined {
  if (attribute.length > longestAttribute) return undefined;
  let matrix = identity;
  const rest = attribute.replace(/([a-zA-Z]+)\s*\(([^)]*)\)[\s,]*/g, (_whole, name: string, list: string) => {
    const step = stepOf(
      name,
      list.trim() === ''
        ? []
        : list
            .trim()
            .split(/[\s,]+|(?<=\d)(?=-)/)
            .map(Number),
    );
    matrix = step === undefined ? [Number.NaN, 0, 0, 0, 0, 0] : multiplied(matrix, step);
    return '';
  });
  return rest.trim() === '' && matrix.every(Number.isFinite) ? matrix : undefined;
}

function stepOf(name: string, values: readonly number[]): Matrix | undefined {
  const [first = Number.NaN, second, third, fourth, fifth, sixth] = values;
  switch (name) {
    case 'matrix':
      return [
        first,
        second ?? Number.NaN,
        third ?? Number.NaN,
        fourth ?? Number.NaN,
        fifth ?? Number.NaN,
        sixth ?? Number.NaN,
      ];
    case 'translate':
      return [1, 0, 0, 1, first, second ?? 0];
    case 'scale':
      return [first, 0, 0, second ?? first, 0, 0];
    case 'rotate': {
      const turn = turned(first);
      if (second === undefined) return turn;
      const there: Matrix = [1, 0, 0, 1, second, third ?? Number.NaN];
      return multiplied(multiplied(there, turn), [1, 0, 0, 1, -second, -(third ?? Number.NaN)]);
    }
    case 'skewX':
      return [1, 0, Math.tan((first * Math.PI) / 180), 1, 0, 0];
    case 'skewY':
      return [1, Math.tan((first * Math.PI) / 180), 0, 1, 0, 0];
    default:
      return undefined;
  }
}

function turned(degrees: number): Matrix {
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
}

function multiplied([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}
