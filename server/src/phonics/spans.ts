import type { AlignedPart } from './align.ts';
import type { Part } from './reading.ts';

/**
 * Gives aligned parts their places in the word. A split grapheme's e is the first e that stands free after its
 * consonant; that is unambiguous because the inventory splits over one consonant grapheme, or over s and t.
 */
export function placed(word: string, parts: readonly AlignedPart[]): readonly Part[] {
  const result: {
    letters: string;
    sounds: AlignedPart['sounds'];
    stress?: AlignedPart['stress'];
    spans: [number, number][];
  }[] = [];
  let at = 0;
  let open: [number, number][] | undefined;
  let since = 0;
  for (const part of parts) {
    const isSplit = part.letters.endsWith('_e');
    const length = isSplit ? part.letters.length - 2 : part.letters.length;
    const spans: [number, number][] = [[at, at + length]];
    at += length;
    result.push({ ...part, spans });
    if (isSplit) {
      open = spans;
      since = 0;
      continue;
    }
    since += 1;
    const isS = part.letters === 's' && since === 1 && word[at] === 't' && word[at + 1] === 'e';
    if (open && word[at] === 'e' && !isS) {
      open.push([at, at + 1]);
      open = undefined;
      at += 1;
    }
  }
  return result as readonly Part[];
}
