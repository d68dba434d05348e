import type { VectorPicture } from '../pictures/picture.ts';

/**
 * A drawing as SVG of paths and nothing else, made of the operators that go into the PDF: what is seen is what is
 * printed. It holds no text, no address and no script.
 */
export function vectorSvg({ width, height, operators }: VectorPicture): string {
  const parts: string[] = [];
  const operands: string[] = [];
  const states: State[] = [];
  let state: State = start;
  let path = '';
  let groups = 0;
  const groupsBefore: number[] = [];
  const paint = (fills: boolean, strokes: boolean, rule: string): void => {
    const opacity = state.opacity === 1 ? '' : ` opacity="${state.opacity}"`;
    const fill = fills ? ` fill="${state.fill}"${rule}` : ' fill="none"';
    const dash =
      state.dash === '' ? '' : ` stroke-dasharray="${state.dash}" stroke-dashoffset="${state.offset}"`;
    const stroke = strokes
      ? ` stroke="${state.stroke}" stroke-width="${state.width}" stroke-linecap="${state.cap}" stroke-linejoin="${state.join}" stroke-miterlimit="${state.miter}"${dash}`
      : '';
    parts.push(`<path d="${path.trim()}"${fill}${stroke}${opacity}/>`);
    path = '';
  };
  for (const token of operators.match(/\[[^\]]*\]|\S+/g) ?? []) {
    const numbers = operands.map(Number);
    const [first = 0, second = 0, third = 0, fourth = 0] = numbers;
    switch (token) {
      case 'q':
        states.push(state);
        groupsBefore.push(groups);
        break;
      case 'Q': {
        state = states.pop() ?? start;
        const before = groupsBefore.pop() ?? 0;
        while (groups > before) {
          parts.push('</g>');
          groups--;
        }
        break;
      }
      case 'cm':
        parts.push(`<g transform="matrix(${numbers.join(' ')})">`);
        groups++;
        break;
      case 'm':
        path += `M${first} ${second}`;
        break;
      case 'l':
        path += `L${first} ${second}`;
        break;
      case 'c':
        path += `C${numbers.join(' ')}`;
        break;
      case 're':
        path += `M${first} ${second}h${third}v${fourth}h${-third}Z`;
        break;
      case 'h':
        path += 'Z';
        break;
      case 'rg':
        state = { ...state, fill: colour(numbers) };
        break;
      case 'RG':
        state = { ...state, stroke: colour(numbers) };
        break;
      case 'w':
        state = { ...state, width: first };
        break;
      case 'J':
        state = { ...state, cap: ['butt', 'round', 'square'][first] ?? 'butt' };
        break;
      case 'j':
        state = { ...state, join: ['miter', 'round', 'bevel'][first] ?? 'miter' };
        break;
      case 'M':
        state = { ...state, miter: first };
        break;
      case 'd':
        state = { ...state, dash: (operands[0] ?? '').slice(1, -1).trim(), offset: second };
        break;
      case 'gs':
        state = { ...state, opacity: Number((operands[0] ?? '').slice(2)) / 100 };
        break;
      case 'f':
      case 'f*':
        paint(true, false, ruleOf(token));
        break;
      case 'S':
        paint(false, true, '');
        break;
      case 'B':
      case 'B*':
        paint(true, true, ruleOf(token));
        break;
      default:
        operands.push(token);
        continue;
    }
    operands.length = 0;
  }
  // PDF counts upwards, SVG downwards; both the frame and what is drawn are cut at the frame's edges.
  const flip = `<g transform="matrix(1 0 0 -1 0 ${height})">`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" preserveAspectRatio="none">${flip}${parts.join('')}${'</g>'.repeat(groups)}</g></svg>`;
}

interface State {
  readonly fill: string;
  readonly stroke: string;
  readonly width: number;
  readonly cap: string;
  readonly join: string;
  readonly miter: number;
  readonly dash: string;
  readonly offset: number;
  readonly opacity: number;
}

/** What PDF starts from. */
const start: State = {
  fill: '#000',
  stroke: '#000',
  width: 1,
  cap: 'butt',
  join: 'miter',
  miter: 10,
  dash: '',
  offset: 0,
  opacity: 1,
};

function ruleOf(operator: string): string {
  return operator.endsWith('*') ? ' fill-rule="evenodd"' : '';
}

function colour(shares: readonly number[]): string {
  return `rgb(${shares.map((share) => Math.round(share * 255)).join(' ')})`;
}
