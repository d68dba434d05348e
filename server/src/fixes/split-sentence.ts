import type { Sentence, Word } from '../story/story.ts';
import { determiners, subjectPronouns, subordinators } from '../words/small-words.ts';
import { type Clause, clauseAt, folded, type Grammar, isNoun, isPastOnly, tenseAt } from './clause.ts';
import type { TextEdit } from './text-edit.ts';

/** A sentence with what is known of its words. */
export interface SplitQuestion {
  readonly sentence: Sentence;
  /** The text that the sentence's spans refer to. */
  readonly source: string;
  readonly grammar: Grammar;
  /** Whether a child can read a word that would be put in: *the*, *But*. */
  readonly canRead: (word: string) => boolean;
}

/** A way to make two sentences of one. */
export interface SentenceSplit {
  readonly edit: TextEdit;
  /** The two sentences as they will read. */
  readonly halves: readonly [string, string];
  /** How many words each will have. */
  readonly words: readonly [number, number];
}

/**
 * The ways to split a sentence at *and*, *but*, *so*, *then*, a comma or a relative clause, the most even first. Only
 * where both halves are plainly whole sentences, a subject said again included; most sentences give none. Questions are
 * left whole, and so is what would tear speech or emphasis apart.
 */
export function splitsOf(question: SplitQuestion): readonly SentenceSplit[] {
  const { sentence, source, grammar } = question;
  if (!/[.!]["'\u201d\u2019*_]*$/.test(source.slice(sentence.span.start, sentence.span.end))) return [];
  const left = clauseAt(grammar, 0, grammar.words.length);
  if (left === undefined) return [];
  const splits: SentenceSplit[] = [];
  for (let at = left.verb + 1; at < grammar.words.length; at++) {
    const cut = cutAt(at, left, question);
    const split = cut && splitOf(cut, question);
    if (split !== undefined) splits.push(split);
  }
  return splits.sort((one, other) => Math.max(...one.words) - Math.max(...other.words));
}

/** Where to cut: the left half ends before the word `leftEnd`, the right one goes on from `rightStart` behind `lead`. */
interface Cut {
  readonly leftEnd: number;
  readonly rightStart: number;
  readonly lead: readonly string[];
}

const conjunctions: ReadonlySet<string> = new Set(['and', 'but', 'so', 'then']);
/** Behind these a second clause may belong to what was said or seen. */
const clauseVerbs: ReadonlySet<string> = new Set(
  'say tell ask think know see hear watch feel let make help want wish hope find yell shout show guess'.split(
    ' ',
  ),
);

function cutAt(at: number, left: Clause, question: SplitQuestion): Cut | undefined {
  const { grammar, sentence, source } = question;
  const word = folded(grammar, at);
  if (conjunctions.has(word)) return cutAtConjunction(at, left, question);
  if (word === 'who' || word === 'which' || word === 'that') return cutAtRelative(at, left, grammar);
  const gap = gapBefore(at, sentence, source);
  if (!/^,\s+$/.test(gap) || !subjectPronouns.has(word) || speaks(left, grammar)) return undefined;
  const right = clauseAt(grammar, at, grammar.words.length);
  return right && { leftEnd: at, rightStart: at, lead: [] };
}

function cutAtConjunction(
  at: number,
  left: Clause,
  { grammar, sentence, source }: SplitQuestion,
): Cut | undefined {
  const { words } = grammar;
  const before = gapBefore(at, sentence, source);
  if (!/^,?\s+$/.test(before)) return undefined;
  const word = folded(grammar, at);
  const second = folded(grammar, at + 1);
  const hasSecond = word === 'and' && (second === 'then' || second === 'so');
  const start = hasSecond ? at + 2 : at + 1;
  const kept = hasSecond ? second : word;
  const lead = kept === 'and' ? [] : [kept];
  if (start >= words.length) return undefined;
  for (let gap = at + 1; gap <= start; gap++)
    if (!/^\s+$/.test(gapBefore(gap, sentence, source))) return undefined;
  if (/^(both|between|either)$/.test(folded(grammar, left.verb + 1))) return undefined;
  const right = clauseAt(grammar, start, words.length);
  if (right !== undefined) {
    const isPlain = right.subject === 'pronoun' || before.startsWith(',');
    return isPlain || !speaks(left, grammar) ? { leftEnd: at, rightStart: start, lead } : undefined;
  }
  if (kept === 'so' || speaks(left, grammar)) return undefined;
  if (source.slice(sentence.span.start, sentence.words[at - 1]?.span.end).includes(',')) return undefined;
  if (hasOtherClause(left, at, grammar)) return undefined;
  const subject = repeated(left, grammar);
  if (subject === undefined || !goesOn(start, left, grammar)) return undefined;
  return { leftEnd: at, rightStart: start, lead: [...lead, ...subject] };
}

/** A verb that plainly has the subject of the clause before: *Kim ran and sat*. */
function goesOn(at: number, left: Clause, grammar: Grammar): boolean {
  const tense = tenseAt(grammar, at);
  if (folded(grammar, at) === folded(grammar, left.verb)) return false;
  const isSmallNext = !isNoun(grammar, at + 1) || grammar.isName(grammar.words[at + 1] ?? '');
  if (left.tense === 'past') return tense === 'past' && (isPastOnly(grammar, at) || isSmallNext);
  if (left.tense === 's') return tense === 's' && isSmallNext;
  // After was and had, what could be a participle hangs on them: was fed and put to bed.
  const isPastHelper = /^(was|were|had|did)$/.test(folded(grammar, left.verb));
  return left.tense === 'helper' && isPastHelper && tense === 'past' && isPastOnly(grammar, at);
}

/** True when another subject and verb stand between: whose verb then follows is not plain. */
function hasOtherClause(left: Clause, end: number, grammar: Grammar): boolean {
  for (let at = left.verb + 1; at < end; at++) {
    const word = folded(grammar, at);
    if (
      subordinators.has(word) &&
      word !== 'after' &&
      word !== 'before' &&
      word !== 'till' &&
      word !== 'until' &&
      word !== 'like' &&
      word !== 'as'
    )
      return true;
    if (word === 'who' || word === 'which' || word === 'that') return true;
    if (subjectPronouns.has(word) || conjunctions.has(word)) return true;
    if (clauseAt(grammar, at, end) !== undefined) return true;
  }
  return false;
}

function speaks(left: Clause, grammar: Grammar): boolean {
  return grammar
    .formsOf(grammar.words[left.verb] ?? '')
    .some(({ part, base }) => part === 'verb' && clauseVerbs.has(base));
}

/** The subject of a clause as it is said again. */
function repeated({ start, subject, subjectEnd }: Clause, grammar: Grammar): readonly string[] | undefined {
  const words = grammar.words.slice(start, subjectEnd);
  switch (subject) {
    case 'several':
      return words.some((word) => /^i$/i.test(word)) ? undefined : ['they'];
    case 'name':
      return words;
    case 'pronoun':
    case 'either':
      return words.map((word) => (word === 'I' ? word : word.toLowerCase()));
    case 'phrase':
      return words.map((word, index) =>
        index === 0 ? (/^an?$/i.test(word) ? 'the' : word.toLowerCase()) : word,
      );
  }
}

/** *Kim met a man who had a hat*: the noun before is the subject of the new sentence. */
function cutAtRelative(at: number, left: Clause, grammar: Grammar): Cut | undefined {
  const { words } = grammar;
  const noun = at - 1;
  if (noun <= left.verb || speaks(left, grammar)) return undefined;
  const tense = tenseAt(grammar, at + 1);
  if (tense === undefined) return undefined;
  const isName = grammar.isName(words[noun] ?? '');
  if (!isName) {
    if (!isNoun(grammar, noun)) return undefined;
    // The noun must open with its own article, and not hang on another noun: the lid of a box that …
    let first = noun - 1;
    while (first > left.verb && grammar.formsOf(words[first] ?? '')[0]?.part === 'adjective') first -= 1;
    if (
      !/^(a|an|the|his|her|my|your|our|their|its|some|two|three|four|five|six|ten)$/.test(
        folded(grammar, first),
      )
    )
      return undefined;
    if (folded(grammar, first - 1) === 'of') return undefined;
  }
  // A third clause behind would lose its hold.
  for (let place = at + 2; place < words.length; place++) {
    if (conjunctions.has(folded(grammar, place)) || subordinators.has(folded(grammar, place)))
      return undefined;
  }
  const subject = isName ? [words[noun] ?? ''] : ['the', words[noun] ?? ''];
  return { leftEnd: at, rightStart: at + 1, lead: subject };
}

function splitOf({ leftEnd, rightStart, lead }: Cut, question: SplitQuestion): SentenceSplit | undefined {
  const { sentence, source, grammar, canRead } = question;
  if (subordinators.has(folded(grammar, 0))) return undefined;
  const last = sentence.words[leftEnd - 1];
  const first = sentence.words[rightStart];
  if (last === undefined || first === undefined) return undefined;
  const ending = folded(grammar, leftEnd - 1);
  if (conjunctions.has(ending) || ending === 'or' || determiners.has(ending) || subordinators.has(ending))
    return undefined;
  if (lead.some((word) => !canRead(word))) return undefined;
  const between = source.slice(last.span.end, first.span.start);
  const leftText = source.slice(sentence.span.start, last.span.end);
  const rightText = source.slice(first.span.start, sentence.span.end);
  if (!isBalanced(leftText) || !isBalanced(rightText) || /["\u201c\u201d*_`<[\]]/.test(between))
    return undefined;
  const space = lineBreakIn(between) ?? ' ';
  const opened = [...lead, textOf(first, source)];
  const start = opened.map((word, index) => (index === 0 ? capital(word) : word)).join(' ');
  const rest = source.slice(first.span.end, sentence.span.end);
  return {
    edit: { span: { start: last.span.end, end: first.span.end }, text: `.${space}${start}` },
    halves: [`${shown(leftText)}.`, shown(start + rest)],
    words: [leftEnd, sentence.words.length - rightStart + lead.length],
  };
}

function gapBefore(at: number, { words }: Sentence, source: string): string {
  const last = words[at - 1];
  const next = words[at];
  return last === undefined || next === undefined ? '' : source.slice(last.span.end, next.span.start);
}

/** Speech and emphasis begin and end in the same half. */
function isBalanced(text: string): boolean {
  const count = (sign: RegExp): number => text.match(sign)?.length ?? 0;
  return (
    count(/"/g) % 2 === 0 &&
    count(/\u201c/g) === count(/\u201d/g) &&
    count(/\*/g) % 2 === 0 &&
    count(/_/g) % 2 === 0 &&
    count(/[[\]()`<>\\]/g) === 0
  );
}

function textOf({ span }: Word, source: string): string {
  return source.slice(span.start, span.end);
}

/** The first line break with the spaces around it. */
function lineBreakIn(between: string): string | undefined {
  const at = between.search(/[\r\n]/);
  if (at < 0) return undefined;
  const before = between.slice(0, at);
  const [after = ''] = /^(?:\r\n|\r|\n)[ \t]*/.exec(between.slice(at)) ?? [];
  return before.slice(before.trimEnd().length) + after;
}

function shown(text: string): string {
  return text.replace(/\s+/g, ' ');
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
