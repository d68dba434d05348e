import type { ReviewContext } from '../review/review-context.ts';
import { reviewWord } from '../review/review-word.ts';
import type { Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Follower } from '../words/hand-replacements.ts';
import type { FormName } from '../words/irregular-forms.ts';
import { countsAlike, fitOf, followerOf } from '../words/place-of-word.ts';
import { determiners, prepositions, subordinators } from '../words/small-words.ts';
import type { Kin, Thesaurus } from '../words/thesaurus.ts';
import type { PartOfSpeech } from '../words/thesaurus-format.ts';
import { formsOf, isPluralNoun, type LikelyForm, wordsInForm } from '../words/word-forms.ts';
import { articleBefore } from './article.ts';

/** A word with all that its replacement rests on. */
export interface ReplaceQuestion {
  /** The words of the sentence or heading. */
  readonly words: readonly Word[];
  /** Which of them is to be replaced, from 0. */
  readonly index: number;
  /** The text that the words' spans refer to. */
  readonly source: string;
  readonly context: ReviewContext;
  readonly thesaurus: Thesaurus;
}

/** Something readable to put in a word's place. */
export interface Replacement {
  /** In the form and with the capitals of the word it is for; sometimes a phrase. */
  readonly text: string;
  /** `a` or `an`, when the article in front has to change with it. */
  readonly article?: string;
  /** Above 0, at most about 1. */
  readonly closeness: number;
}

/** At most so many are offered. */
const most = 8;
/** What is less close than this is a different thing altogether. */
const least = 0.22;

/**
 * What could stand in a word's place at the lesson: near in meaning, in the same form, of the kind that the place in the
 * sentence asks for, readable there, not unfit for six-year-olds. Closest first; none for words that are in no list.
 */
export function replacementsFor(question: ReplaceQuestion): readonly Replacement[] {
  const { words, index, source } = question;
  const word = words[index];
  if (word?.form !== 'word' || source.slice(word.span.start, word.span.end) !== word.text) return [];
  if (isHyphenated(word, source)) return [];
  const found = new Map<string, Candidate>();
  for (const candidate of candidatesFor(question)) {
    if (candidate.closeness < least) continue;
    const known = found.get(candidate.text);
    if (known === undefined || known.closeness < candidate.closeness) found.set(candidate.text, candidate);
  }
  const byCloseness = [...found.values()].sort(
    (one, other) => other.closeness - one.closeness || (one.text < other.text ? -1 : 1),
  );
  const offered: Replacement[] = [];
  for (const candidate of byCloseness) {
    const replacement = asOffered(candidate, question);
    if (replacement !== undefined) offered.push(replacement);
    if (offered.length === most) break;
  }
  return offered;
}

interface Candidate {
  /** In its form, in lower case, without a possessive ending. */
  readonly text: string;
  readonly closeness: number;
}

/** The endings that are kept as they stand: Kim's, the dogs'. */
const possessive = /['\u2019\u02bc]s?$/;

function* candidatesFor({ words, index, source, context, thesaurus }: ReplaceQuestion): Iterable<Candidate> {
  const { phonics } = context;
  const texts = words.map(({ text }) => text);
  const word = words[index];
  const folded = foldedWord(word?.text ?? '').replace(possessive, '');
  const isOwner = possessive.test(word?.text ?? '');
  for (const { words: phrase, closeness } of isOwner ? [] : thesaurus.byHand.of(folded, 'other')) {
    yield { text: phrase.join(' '), closeness };
  }
  // What WordNet has of by and over is adverbs, and no help.
  if (prepositions.has(folded) || subordinators.has(folded) || determiners.has(folded)) return;
  const cache = new Map<string, readonly LikelyForm[]>();
  const forms = (each: string): readonly LikelyForm[] => {
    const known = cache.get(each) ?? formsOf(each, thesaurus, phonics);
    cache.set(each, known);
    return known;
  };
  const weighed = forms(folded)
    .filter(({ part }) => !isOwner || part === 'noun')
    .map((form) => ({ form, weight: form.likelihood * fitOf(form, texts, index, forms) }));
  const heaviest = Math.max(0, ...weighed.map(({ weight }) => weight));
  const follower = followerOf(texts, index, endsClause(words, index, source));
  for (const { form, weight } of weighed) {
    if (weight < heaviest / 3) continue;
    const likelihood = Math.sqrt(weight / heaviest);
    for (const { phrase, closeness } of kinOf(form, follower, thesaurus)) {
      const [first = '', ...rest] = phrase;
      if (first === form.base && rest.length === 0) continue;
      if (form.part === 'noun' && rest.length === 0) {
        const isPlural = form.form === 'plural' || isPluralNoun(form.base, phonics);
        if (isPluralNoun(first, phonics) && !isPlural) continue;
        if (!countsAlike(texts, index, { original: form.base, replacement: first, isPlural }, forms))
          continue;
      }
      for (const inForm of formedFor(phrase, form.part, form.form, { thesaurus, phonics })) {
        yield { text: inForm, closeness: closeness * likelihood };
      }
    }
  }
}

/** A phrase in a form: a noun's last word takes it (*big cats*), of all else the first (*went up*). */
function formedFor(
  phrase: readonly string[],
  part: PartOfSpeech,
  form: FormName,
  { thesaurus, phonics }: { thesaurus: Thesaurus; phonics: ReviewContext['phonics'] },
): readonly string[] {
  const at = part === 'noun' ? phrase.length - 1 : 0;
  return wordsInForm(phrase[at] ?? '', part, form, thesaurus, phonics).map((formed) =>
    phrase.map((each, index) => (index === at ? formed : each)).join(' '),
  );
}

function* kinOf(
  { base, part }: LikelyForm,
  follower: Follower,
  thesaurus: Thesaurus,
): Iterable<{ readonly phrase: readonly string[]; readonly closeness: number }> {
  for (const { words, closeness, when } of thesaurus.byHand.of(base, part)) {
    if (when === undefined || when === follower) yield { phrase: words, closeness };
  }
  for (const kin of thesaurus.kinOf(base, part)) {
    if (thesaurus.byHand.isBarred(base, part, kin.word)) continue;
    if (part === 'verb' && (colourless.has(kin.word) || !canFollow(kin, follower))) continue;
    // What was not chosen by hand stands behind what was.
    yield { phrase: [kin.word], closeness: kin.closeness * 0.9 };
  }
}

/** Verbs so broad that they hardly stand for another one, unless by hand. */
const colourless: ReadonlySet<string> = new Set(
  'be have do make take get let need put act change become keep hold'.split(' '),
);

function canFollow({ follows }: Kin, follower: Follower): boolean {
  if (follows === undefined) return true;
  if (!follows.object && !follows.nothing && !follows.place) return false;
  switch (follower) {
    case 'object':
      return follows.object;
    case 'nothing':
      return follows.nothing || follows.place;
    case 'place':
      return follows.place || follows.nothing;
  }
}

function asOffered({ text, closeness }: Candidate, question: ReplaceQuestion): Replacement | undefined {
  const { words, index, source, context } = question;
  const word = words[index];
  if (word === undefined) return undefined;
  const ownerEnding = possessive.exec(word.text)?.[0] ?? '';
  const shown = capitalsAs(word.text, text) + ownerEnding;
  const parts = shown.split(' ');
  if (parts.some((part) => context.phonics.words.unfitFor(part.replace(possessive, '')) !== undefined))
    return undefined;
  if (repeatsNeighbour(parts, words, index)) return undefined;
  const put = parts.map((part): Word => ({ ...word, text: part }));
  const after = [...words.slice(0, index), ...put, ...words.slice(index + 1)];
  for (let at = index; at < index + put.length; at++) if (!isReadable(after, at, context)) return undefined;
  const article = articleBefore(parts[0] ?? '', { words, index, source, phonics: context.phonics });
  if (article.text === undefined) return { text: shown, closeness };
  const before = words[index - 1];
  if (before === undefined || article.isApart) return undefined;
  const changed = [...words.slice(0, index - 1), { ...before, text: article.text }, ...after.slice(index)];
  return isReadable(changed, index - 1, context)
    ? { text: shown, article: article.text, closeness }
    : undefined;
}

/** What `check` would say, and not by a guess. */
function isReadable(words: readonly Word[], index: number, context: ReviewContext): boolean {
  const word = words[index];
  if (word === undefined) return false;
  const { kind, reading } = reviewWord(word, { words, index }, context);
  return (kind === 'decodable' && reading?.source !== 'rule') || kind === 'high-frequency';
}

function repeatsNeighbour(parts: readonly string[], words: readonly Word[], index: number): boolean {
  const before = foldedWord(words[index - 1]?.text ?? '');
  const after = foldedWord(words[index + 1]?.text ?? '');
  return foldedWord(parts[0] ?? '') === before || foldedWord(parts.at(-1) ?? '') === after;
}

function capitalsAs(original: string, text: string): string {
  const letters = original.replace(possessive, '');
  if (letters.length > 1 && letters === letters.toUpperCase()) return text.toUpperCase();
  const first = letters.charAt(0);
  return first === first.toLowerCase() ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

function isHyphenated({ span }: Word, source: string): boolean {
  const isHyphen = (sign: string): boolean => /[-\u2010\u2011]/.test(sign);
  return isHyphen(source.charAt(span.start - 1)) || isHyphen(source.charAt(span.end));
}

function endsClause(words: readonly Word[], index: number, source: string): boolean {
  const word = words[index];
  const next = words[index + 1];
  if (word === undefined || next === undefined) return true;
  return /[,.!?;:\u2026"\u201c\u201d]/.test(source.slice(word.span.end, next.span.start));
}
