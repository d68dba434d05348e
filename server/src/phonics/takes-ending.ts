import { inflect, type Split } from './inflection.ts';
import { partOfSpeech } from './lexicon.ts';

/** Parts of speech (bits of `partOfSpeech`) of a base and of the whole word; 0 for a word that no list has. */
export interface SplitWords {
  readonly base: number;
  readonly whole: number;
}

/**
 * Whether the base of a split is a word that takes such an ending: a verb for ed and ing, an adjective for est, and so on;
 * and whether it takes it so: *hoped* is hope with ed and not hop, which would double its consonant. A listed whole word
 * has to be what the ending makes of the base (*runner* a noun, *sunny* an adjective).
 */
export function takesEnding(split: Split, word: string, parts: SplitWords): boolean {
  const { base, change, ending } = split;
  const { noun, verb, adjective, adverb } = partOfSpeech;
  if (ending.includes("'")) return true;
  if (base.length < (ending === 's' || ending === 'es' || ending === 'ed' || ending === 'ing' ? 2 : 3))
    return false;
  const isPlural = ending === 's' || ending === 'es';
  if (change === 'none' && !isPlural && doubles(base) && inflect(base, ending) !== word) return false;
  const is = (bits: number): boolean => (parts.base & bits) !== 0;
  const makes = (bits: number): boolean => parts.whole === 0 || (parts.whole & bits) !== 0;
  switch (ending) {
    case 's':
    case 'es':
      return is(noun | verb);
    case 'ed':
      // skilled, gloved: an adjective made of a noun.
      return is(verb) || (is(noun) && (parts.whole & adjective) !== 0 && (parts.whole & noun) === 0);
    case 'ing':
      return is(verb);
    case 'est':
      return (
        is(adjective | adverb) && ((parts.whole & noun) === 0 || (parts.whole & (adjective | adverb)) !== 0)
      );
    case 'er':
      // soon, sooner: an adverb alone takes it whatever else the whole is.
      if (parts.base === adverb && parts.whole !== 0) return true;
      return (is(adjective) && (parts.whole & noun) === 0) || (is(verb) && makes(noun));
    case 'y':
      return is(noun | verb) && makes(adjective);
    case 'ly':
      return (is(adjective) && makes(adverb | adjective)) || (is(noun) && (parts.whole & adjective) !== 0);
    default:
      return false;
  }
}

/** True for a one-syllable base with one short vowel letter before one consonant: it doubles that (*hop*, *hopped*). */
function doubles(base: string): boolean {
  return /^[^aeiou]*(qu)?[aeiouy][bdfgklmnprstvz]$/.test(base);
}
