import { isVowel } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';

/** What the article right before a word has to become. */
export interface ArticleChange {
  /** `a` or `an` with the capitals of the one that stands there; absent when nothing has to change. */
  readonly text?: string;
  /** True when more than white space stands between the two. */
  readonly isApart: boolean;
}

/** Whether *a* or *an* stands right before a word and no longer fits the word that takes its place. */
export function articleBefore(
  replacement: string,
  {
    words,
    index,
    source,
    phonics,
  }: { words: readonly Word[]; index: number; source: string; phonics: Phonics },
): ArticleChange {
  const before = words[index - 1];
  const word = words[index];
  const article = foldedWord(before?.text ?? '');
  if (before === undefined || word === undefined || (article !== 'a' && article !== 'an'))
    return { isApart: false };
  const isApart = source.slice(before.span.end, word.span.start).trim() !== '';
  const fitting = startsWithVowelSound(replacement, phonics) ? 'an' : 'a';
  if (fitting === article) return { isApart };
  return { text: before.text.startsWith('A') ? `A${fitting.slice(1)}` : fitting, isApart };
}

function startsWithVowelSound(word: string, phonics: Phonics): boolean {
  const first = phonics.readingsOf(word)[0]?.parts.flatMap(({ sounds }) => sounds)[0];
  return first !== undefined && isVowel(first);
}
