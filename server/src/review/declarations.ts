import type { FrontMatter } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';

/** What the writer declared of single words in the front matter. */
export interface Declarations {
  /** True for a declared name and its possessive: `Kim`, `KIM`, `Kim's`. */
  isName(word: string): boolean;
  /**
   * The story word, as declared, that a word is a form of: the word itself, its s, es or ies form, and the possessive
   * of any of these. These keep the meaning the teacher explained; forms such as `ponding` have to be declared.
   */
  storyWordOf(word: string): string | undefined;
  /** The graphemes the writer gave for a word, as written. */
  graphemesOf(word: string): string | undefined;
  /** True when it says anything of a word. */
  mentions(word: string): boolean;
  /** Equal for two front matters that say the same of every word; nothing else is promised of it. */
  readonly key: string;
}

/**
 * Gathers the declarations of a front matter. Of a name or story word of several words (`Mr. Hill`, `guinea pig`) each
 * part counts on its own; of such a name only the parts with a capital, so that `of` never becomes one.
 */
export function declarationsOf(frontMatter: FrontMatter): Declarations {
  const names = new Map<string, boolean>();
  for (const { value } of frontMatter.names) {
    const parts = partsOf(value);
    for (const part of parts) {
      if (parts.length === 1 || startsWithCapital(part)) names.set(foldedWord(part), startsWithCapital(part));
    }
  }
  const storyWords = new Map<string, string>();
  for (const { word } of frontMatter.storyWords) {
    for (const part of partsOf(word)) storyWords.set(foldedWord(part), word);
  }
  const graphemes = new Map<string, string>();
  for (const { word, graphemes: given } of frontMatter.pronunciations) {
    graphemes.set(foldedWord(word.value), given.value);
  }
  // Most front matter declares little, and every word of a story is asked after.
  const isName = (word: string): boolean => {
    if (names.size === 0) return false;
    const folded = foldedWord(word);
    const capital = names.get(withoutPossessive(folded)) ?? names.get(folded);
    return capital !== undefined && (!capital || startsWithCapital(word));
  };
  const storyWordOf = (word: string): string | undefined => {
    if (storyWords.size === 0) return undefined;
    for (const base of simpleBases(foldedWord(word))) {
      const declared = storyWords.get(base);
      if (declared !== undefined) return declared;
    }
    return undefined;
  };
  const graphemesOf = (word: string): string | undefined =>
    graphemes.size === 0 ? undefined : graphemes.get(foldedWord(word));
  return {
    isName,
    storyWordOf,
    graphemesOf,
    mentions: (word) => isName(word) || storyWordOf(word) !== undefined || graphemesOf(word) !== undefined,
    key: JSON.stringify([[...names], [...storyWords], [...graphemes]]),
  };
}

function partsOf(declared: string): readonly string[] {
  return declared.split(/[\s\u2010\u2011-]+/).filter((part) => part !== '');
}

function startsWithCapital(word: string): boolean {
  const first = String.fromCodePoint(word.codePointAt(0) ?? 0);
  return first !== first.toLowerCase();
}

function withoutPossessive(folded: string): string {
  // Most words hold no apostrophe, and looking for one is much cheaper than replacing none.
  return folded.includes("'") ? folded.replace(/'s?$/, '') : folded;
}

function simpleBases(folded: string): readonly string[] {
  const owner = withoutPossessive(folded);
  const bases = [folded, owner];
  if (owner.endsWith('s')) bases.push(owner.slice(0, -1));
  if (owner.endsWith('es')) bases.push(owner.slice(0, -2));
  if (owner.endsWith('ies')) bases.push(`${owner.slice(0, -3)}y`);
  return bases;
}
