import { type Typeface, widthOf } from '../pdf/typeface.ts';

/** How a line of text is set. */
export interface TextStyle {
  readonly face: Typeface;
  /** In points. */
  readonly size: number;
  /** Each space is this many times as wide as the face has it. */
  readonly wordSpace: number;
}

/**
 * Breaks a text between words into as few lines as fit, as even as can be, so that no word is left alone on the last
 * one; rather behind a comma, a stop or closing quotation marks than elsewhere, and rather not behind a little word that
 * leans on the next one. A word is never broken; one that is wider than the line stands on a line by itself.
 */
export function brokenLines(text: string, width: number, style: TextStyle): readonly string[] {
  const words = unbreakable(text);
  const widths = words.map((word) => widthOf(word, style.face, style.size, style.wordSpace));
  const space = widthOf(' ', style.face, style.size, style.wordSpace);
  /** The best way to set the words before each place. */
  const ways: Way[] = [{ lines: 0, roughness: 0, from: 0 }];
  for (let to = 1; to <= words.length; to++) {
    let best: Way | undefined;
    let length = -space;
    for (let from = to - 1; from >= 0; from--) {
      length += (widths[from] ?? 0) + space;
      if (length > width && from < to - 1) break;
      const before = ways[from];
      if (before === undefined) continue;
      const unevenness = (Math.max(0, width - length) / width) ** 2;
      const roughness =
        before.roughness + unevenness + (to < words.length ? costOfEnd(words[to - 1] ?? '') : 0);
      const way = { lines: before.lines + 1, roughness, from };
      if (
        best === undefined ||
        way.lines < best.lines ||
        (way.lines === best.lines && roughness < best.roughness)
      ) {
        best = way;
      }
    }
    ways.push(best ?? { lines: 0, roughness: 0, from: to - 1 });
  }
  const lines: string[] = [];
  for (let to = words.length; to > 0; to = ways[to]?.from ?? 0) {
    lines.push(words.slice(ways[to]?.from ?? 0, to).join(' '));
  }
  return lines.reverse();
}

/** The pieces between which a line may end: words, each with the dashes that stand alone behind it. */
function unbreakable(text: string): readonly string[] {
  const pieces: string[] = [];
  for (const word of text.split(' ').filter((each) => each !== '')) {
    if (pieces.length > 0 && /^[\u2013\u2014…]+$/.test(word)) pieces.push(`${pieces.pop() ?? ''} ${word}`);
    else pieces.push(word);
  }
  return pieces;
}

/** How little a line should end with this word, in shares of a line's squared unevenness. */
function costOfEnd(word: string): number {
  if (/[,;:.!?…”’—–]$/.test(word)) return -0.3;
  return leaningWords.has(word.toLowerCase().replace(/^[“‘(]+/, '')) ? 0.15 : 0;
}

const leaningWords: ReadonlySet<string> = new Set(
  'a an the of to in on at by for from with and or but my your his her its our their as if is was'.split(' '),
);

interface Way {
  readonly lines: number;
  readonly roughness: number;
  readonly from: number;
}

/** The words of a text that are wider than a line. */
export function wordsTooWide(text: string, width: number, style: TextStyle): readonly string[] {
  return text.split(' ').filter((word) => widthOf(word, style.face, style.size) > width);
}
