import type { AlignedPart } from './align.ts';
import type { StoredInflection } from './lexicon.ts';
import { isVowel } from './phoneme.ts';
import type { Seams } from './syllables.ts';

/** The base of an inflected word by the change it underwent: *hopp*ed is hop, *bak*ing is bake, *cri*ed is cry. */
export function baseOf(word: string, parts: readonly AlignedPart[], inflection: StoredInflection): string {
  const stem = word.slice(0, word.length - endingLength(parts, inflection));
  switch (inflection.change) {
    case 'none':
      return stem;
    case 'doubled':
      return stem.slice(0, -1);
    case 'dropped e':
      return `${stem}e`;
    case 'dropped le':
      return `${stem}le`;
    case 'y to i':
      return `${stem.slice(0, -1)}y`;
    case 'ie to y':
      return `${stem.slice(0, -1)}ie`;
    case 'f to v':
      return inflection.ending === 'es' ? `${stem.slice(0, -1)}f` : `${stem.slice(0, -2)}fe`;
  }
}

/** Where an inflected word divides before its ending: before ly, and before an ending that begins with a vowel sound. */
export function seamsOf(word: string, parts: readonly AlignedPart[], inflection: StoredInflection): Seams {
  const { change, endingParts } = inflection;
  const first = parts[parts.length - endingParts];
  const isSyllable = inflection.ending === 'ly' ? change !== 'dropped le' : first?.sounds.some(isVowel);
  if (!isSyllable || first?.letters.startsWith("'")) return {};
  const at = word.length - endingLength(parts, inflection);
  // jug-gling, han-dling, but tack-ling
  if (change === 'dropped e' && /[^aeiour]l$/.test(word.slice(0, at))) {
    return { ending: { at: word.slice(0, at).endsWith('ckl') ? at - 1 : at - 2, doubled: false } };
  }
  return { ending: { at, doubled: change === 'doubled' } };
}

function endingLength(parts: readonly AlignedPart[], { endingParts }: StoredInflection): number {
  return parts.slice(parts.length - endingParts).reduce((sum, part) => sum + part.letters.length, 0);
}
