import { foldedWord } from '../text/folded-word.ts';
import type { Follower } from './hand-replacements.ts';
import {
  determiners,
  eitherPronouns,
  formsOfBe,
  formsOfHave,
  massNouns,
  massOrCount,
  middleAdverbs,
  modals,
  objectPronouns,
  prepositions,
  subjectPronouns,
} from './small-words.ts';
import type { LikelyForm } from './word-forms.ts';

/** Tells the forms a word may have anywhere; given by whoever has the lexicon. */
export type FormsOf = (word: string) => readonly LikelyForm[];

/** How far a form fits between its neighbours: a factor, 1 where they say nothing, 0 where it is out of the question. */
export function fitOf(form: LikelyForm, words: readonly string[], at: number, formsOf: FormsOf): number {
  const before = beforeAdverbs(words, at);
  const after = foldedWord(words[at + 1] ?? '');
  const isSubject = subjectPronouns.has(before) || eitherPronouns.has(before);
  switch (form.part) {
    case 'noun':
      if (isSubject || modals.has(before)) return 0.1;
      if (form.form === 'base' && /^(an?|this|that|each|every|one)$/.test(before))
        return mayBeNoun(after, formsOf) ? 1.5 : 5;
      if (determiners.has(before) || isAdjective(before, formsOf)) return mayBeNoun(after, formsOf) ? 1.5 : 5;
      return prepositions.has(before) ? 2 : 1;
    case 'verb':
      if (determiners.has(before)) return form.form === 'ing' || form.form === 'participle' ? 0.3 : 0.05;
      if (form.form === 'base') {
        if (modals.has(before) || before === 'to' || before === "let's" || before === '') return 4;
        return isSubject ? 3 : 0.6;
      }
      if (form.form === 'participle') return formsOfHave.has(before) || formsOfBe.has(before) ? 6 : 0.2;
      if (form.form === 'past')
        return formsOfHave.has(before) || formsOfBe.has(before) ? 0.1 : isSubject ? 4 : 2;
      if (form.form === 'ing') return formsOfBe.has(before) ? 5 : 1;
      return isSubject ? 4 : 1;
    case 'adjective':
      if (isSubject || modals.has(before)) return 0.1;
      if (formsOfBe.has(before) || /^(so|very|too|feels?|felt|looks?|looked|gets?|got)$/.test(before))
        return 3;
      if (mayBeNoun(after, formsOf)) return determiners.has(before) ? 5 : 2;
      return determiners.has(before) ? 0.2 : 0.5;
    case 'adverb':
      return mayBeNoun(after, formsOf) ? 0.3 : 1;
  }
}

/** What stands behind a verb. A place is told by its preposition. */
export function followerOf(words: readonly string[], at: number, endsClause: boolean): Follower {
  const after = foldedWord(words[at + 1] ?? '');
  if (after === '' || endsClause || /^(and|but|so|then|or|when|if)$/.test(after)) return 'nothing';
  if (prepositions.has(after)) return 'place';
  if (determiners.has(after) || objectPronouns.has(after) || eitherPronouns.has(after)) return 'object';
  if (/^(away|back|fast|too|again|soon|well|there|here|now|home)$/.test(after) || after.endsWith('ly'))
    return 'nothing';
  return 'object';
}

/** Whether a noun can take the place of another there: *a* wants a noun that counts, no article one that does not. */
export function countsAlike(
  words: readonly string[],
  at: number,
  { original, replacement, isPlural }: { original: string; replacement: string; isPlural: boolean },
  formsOf: FormsOf,
): boolean {
  if (isPlural) return !massNouns.has(replacement) || massOrCount.has(replacement);
  const first = firstOfPhrase(words, at, formsOf);
  if (/^(an?|one|each|every|another)$/.test(first))
    return !massNouns.has(replacement) || massOrCount.has(replacement);
  const isMeasured = /^(some|any|all|no|much|more|enough)$/.test(first);
  if (!isMeasured && (determiners.has(first) || first.endsWith("'s"))) return true;
  return massNouns.has(replacement) || !massNouns.has(original);
}

/** The word that opens the noun phrase a noun stands in: the determiner before its adjectives. */
function firstOfPhrase(words: readonly string[], at: number, formsOf: FormsOf): string {
  let place = at - 1;
  while (place > 0 && isAdjective(foldedWord(words[place] ?? ''), formsOf)) place -= 1;
  return foldedWord(words[place] ?? '');
}

function beforeAdverbs(words: readonly string[], at: number): string {
  let place = at - 1;
  while (place > 0 && middleAdverbs.has(foldedWord(words[place] ?? ''))) place -= 1;
  return foldedWord(words[place] ?? '');
}

function isAdjective(word: string, formsOf: FormsOf): boolean {
  if (word === '' || determiners.has(word) || prepositions.has(word)) return false;
  const [first] = formsOf(word);
  return first?.part === 'adjective';
}

function mayBeNoun(word: string, formsOf: FormsOf): boolean {
  if (word === '' || determiners.has(word) || prepositions.has(word)) return false;
  return formsOf(word).some(({ part, likelihood }) => part === 'noun' && likelihood >= 0.4);
}
