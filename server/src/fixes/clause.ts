import { foldedWord } from '../text/folded-word.ts';
import {
  determiners,
  eitherPronouns,
  formsOfBe,
  formsOfHave,
  middleAdverbs,
  modals,
  prepositions,
  subjectPronouns,
  subordinators,
} from '../words/small-words.ts';
import type { LikelyForm } from '../words/word-forms.ts';

/** What is known of the words of a sentence. */
export interface Grammar {
  /** The words as written. */
  readonly words: readonly string[];
  formsOf(word: string): readonly LikelyForm[];
  /** True for a declared name. */
  isName(word: string): boolean;
}

/** A subject with its verb. Places are indexes of words. */
export interface Clause {
  readonly start: number;
  /** What the subject is: *he*; *Kim*; *the red hen*; *Kim and Tam*. */
  readonly subject: 'pronoun' | 'either' | 'name' | 'phrase' | 'several';
  /** Just past the subject. */
  readonly subjectEnd: number;
  readonly verb: number;
  readonly tense: Tense;
}

/** What the first verb of a clause is. `helper` stands for be, have, can and their kind. */
export type Tense = 'past' | 's' | 'base' | 'helper';

/** The clause that begins with the word at `start`, by its first words; undefined unless subject and verb are plain to see. */
export function clauseAt(grammar: Grammar, start: number, end: number): Clause | undefined {
  const subject = subjectAt(grammar, start, end);
  if (subject === undefined) return undefined;
  let verb = subject.subjectEnd;
  while (verb < end && middleAdverbs.has(folded(grammar, verb))) verb += 1;
  const tense = verb < end ? tenseAt(grammar, verb) : undefined;
  if (tense === undefined) return undefined;
  if (tense === 'base' && !takesBase(grammar, subject)) return undefined;
  return { start, ...subject, verb, tense };
}

/** What a word is as a verb with a subject; undefined when it is rather something else. */
export function tenseAt(grammar: Grammar, at: number): Tense | undefined {
  const word = folded(grammar, at);
  if ((formsOfBe.has(word) && !/^(be|been|being)$/.test(word)) || formsOfHave.has(word) || modals.has(word)) {
    return 'helper';
  }
  if (isSmall(word)) return undefined;
  const forms = grammar.formsOf(word);
  const [first] = forms;
  if (first?.part !== 'verb') return undefined;
  const likely = (name: LikelyForm['form'], least: number): boolean =>
    forms.some(({ part, form, likelihood }) => part === 'verb' && form === name && likelihood >= least);
  // Barked can be nothing but a verb, although bark is a noun as well.
  if (likely('past', 0.5) || (likely('past', 0) && forms.every(({ part }) => part === 'verb'))) return 'past';
  if (likely('s', 0.6)) return 's';
  return likely('base', 0.6) ? 'base' : undefined;
}

/** True when the past form at a place could not be a participle: *ran*, *ate*; but not *sat* or *jumped*. */
export function isPastOnly(grammar: Grammar, at: number): boolean {
  const forms = grammar.formsOf(grammar.words[at] ?? '').filter(({ part }) => part === 'verb');
  return forms.some(({ form }) => form === 'past') && !forms.some(({ form }) => form === 'participle');
}

/** True for a word that is a noun before it is anything else. */
export function isNoun(grammar: Grammar, at: number): boolean {
  const word = folded(grammar, at);
  if (isSmall(word)) return false;
  const forms = grammar.formsOf(word);
  return (
    forms[0]?.part === 'noun' || forms.some(({ part, likelihood }) => part === 'noun' && likelihood >= 0.45)
  );
}

/** The word at a place in lower case; empty outside the sentence. */
export function folded({ words }: Grammar, at: number): string {
  return foldedWord(words[at] ?? '');
}

type Subject = Pick<Clause, 'subject' | 'subjectEnd'>;

function subjectAt(grammar: Grammar, start: number, end: number): Subject | undefined {
  const first = oneSubjectAt(grammar, start, end);
  if (first === undefined || folded(grammar, first.subjectEnd) !== 'and') return first;
  const second = oneSubjectAt(grammar, first.subjectEnd + 1, end);
  return second === undefined || first.subject === 'either'
    ? undefined
    : { subject: 'several', subjectEnd: second.subjectEnd };
}

function oneSubjectAt(grammar: Grammar, start: number, end: number): Subject | undefined {
  const word = folded(grammar, start);
  if (start >= end) return undefined;
  if (subjectPronouns.has(word)) return { subject: 'pronoun', subjectEnd: start + 1 };
  if (eitherPronouns.has(word)) return { subject: 'either', subjectEnd: start + 1 };
  if (grammar.isName(grammar.words[start] ?? '') && !word.endsWith("'s")) {
    return { subject: 'name', subjectEnd: start + 1 };
  }
  if (!determiners.has(word) && !word.endsWith("'s")) return undefined;
  for (let at = start + 1; at < Math.min(end, start + 5); at++) {
    if (isSmall(folded(grammar, at))) return undefined;
    const next = at + 1;
    const followed =
      next < end &&
      (tenseAt(grammar, next) !== undefined ||
        folded(grammar, next) === 'and' ||
        middleAdverbs.has(folded(grammar, next)));
    if (isNoun(grammar, at) && followed) return { subject: 'phrase', subjectEnd: next };
  }
  return undefined;
}

/** Only I, you, we, they and what is more than one go with a bare verb: *they run*. */
function takesBase(grammar: Grammar, { subject, subjectEnd }: Subject): boolean {
  const word = folded(grammar, subjectEnd - 1);
  if (subject === 'several') return true;
  if (subject === 'pronoun') return word !== 'he' && word !== 'she';
  if (subject === 'either') return word === 'you';
  return grammar.formsOf(word).some(({ part, form }) => part === 'noun' && form === 'plural');
}

function isSmall(word: string): boolean {
  return (
    word === '' ||
    determiners.has(word) ||
    prepositions.has(word) ||
    subordinators.has(word) ||
    subjectPronouns.has(word) ||
    eitherPronouns.has(word) ||
    /^(and|but|so|then|or|not|who|which|me|him|us|them)$/.test(word)
  );
}
