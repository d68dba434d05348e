import { foldedWord } from '../text/folded-word.ts';
import { rowsOf } from './table.ts';

/** One reading's meaning. */
export interface Sense {
  /** What a sentence is searched for: `verb`, `noun`, `past` … as the table of heteronyms has it. */
  readonly use: string;
  /** A few words that tell the meanings apart. */
  readonly gloss: string;
}

/** The words with one spelling and two readings of different meaning, and what tells them apart. */
export interface Heteronyms {
  /** The meaning of each reading, in the order of the readings; undefined for a word that has one meaning only. */
  sensesOf(word: string): readonly Sense[] | undefined;
  /**
   * Which reading the word at place `at` of a sentence has: an index into its senses, 0 where nothing tells and for
   * words that are no heteronyms. `words` are the sentence's words as written.
   */
  choose(words: readonly string[], at: number): number;
}

/** The three tables of `server/data` that describe heteronyms: their readings, the rules, the classes of neighbours. */
export interface HeteronymTables {
  readonly heteronyms: string;
  readonly rules: string;
  readonly classes: string;
}

/** Reads the tables; each row of the rules is tried in its order. */
export function readHeteronyms(tables: HeteronymTables): Heteronyms {
  const senses = readSenses(tables.heteronyms);
  const rules = readRules(tables.rules);
  const classes = readClasses(tables.classes);
  const rulesByWord = new Map<string, readonly Rule[]>();
  const rulesFor = (word: string, known: readonly Sense[]): readonly Rule[] => {
    const found =
      rulesByWord.get(word) ??
      rules.filter(
        (each) => (each.words.has(word) || each.words.has('*')) && known.some(({ use }) => use === each.use),
      );
    rulesByWord.set(word, found);
    return found;
  };
  return {
    sensesOf: (word) => senses.get(foldedWord(word)),
    choose(words, at) {
      const word = foldedWord(words[at] ?? '');
      const known = senses.get(word);
      if (!known) return 0;
      const possible = rulesFor(word, known);
      // Of the most frequent ones, *a* and *the*, no rule speaks.
      if (possible.length === 0) return byCapital(known, words[at] ?? '', at);
      const sentence = { words: words.map(foldedWord), written: words, classes };
      const rule = possible.find((each) => fits(each, sentence, at));
      const chosen = rule ? known.findIndex(({ use }) => use === rule.use) : -1;
      return chosen >= 0 ? chosen : byCapital(known, words[at] ?? '', at);
    },
  };
}

interface Rule {
  readonly words: ReadonlySet<string>;
  readonly use: string;
  /** Sequences of which one must stand directly before; empty for no condition. */
  readonly before: readonly (readonly string[])[];
  readonly after: readonly (readonly string[])[];
  readonly anywhere: readonly string[];
}

type Classes = ReadonlyMap<string, ReadonlySet<string>>;

interface Sentence {
  readonly words: readonly string[];
  readonly written: readonly string[];
  readonly classes: Classes;
}

/** Polish and August have a reading of their own when a capital marks them inside a sentence. */
function byCapital(senses: readonly Sense[], word: string, at: number): number {
  const name = senses.findIndex(({ use }) => use === 'name');
  return name > 0 && at > 0 && /^\p{Lu}/u.test(word) ? name : 0;
}

function fits(rule: Rule, sentence: Sentence, at: number): boolean {
  const start = beforeAdverbs(sentence, at);
  if (
    rule.before.length > 0 &&
    !rule.before.some(
      (sequence) => standsBefore(sequence, sentence, at) || standsBefore(sequence, sentence, start),
    )
  )
    return false;
  if (
    rule.after.length > 0 &&
    !rule.after.some((sequence) => sequence.every((token, index) => matches(token, sentence, at + 1 + index)))
  )
    return false;
  return (
    rule.anywhere.length === 0 ||
    sentence.words.some(
      (_, place) => place !== at && rule.anywhere.some((token) => matches(token, sentence, place)),
    )
  );
}

function beforeAdverbs(sentence: Sentence, at: number): number {
  let start = at;
  while (start > 0 && sentence.classes.get('adverb')?.has(sentence.words[start - 1] ?? '')) start -= 1;
  return start;
}

function standsBefore(sequence: readonly string[], sentence: Sentence, at: number): boolean {
  return sequence.every((token, index) => matches(token, sentence, at - sequence.length + index));
}

function matches(token: string, sentence: Sentence, at: number): boolean {
  const word = sentence.words[at];
  if (token === '^') return at === -1;
  if (token === '$') return at === sentence.words.length;
  if (word === undefined) return false;
  if (token === '@owner')
    return (
      (sentence.classes.get('possessive')?.has(word) ?? false) ||
      (/'s$|s'$/.test(word) && !isInClass(word, sentence.classes))
    );
  if (token === '@name-like')
    return /^\p{Lu}/u.test(sentence.written[at] ?? '') && !isInClass(word, sentence.classes);
  if (token.startsWith('@')) return sentence.classes.get(token.slice(1))?.has(word) ?? false;
  return word === token;
}

function isInClass(word: string, classes: Classes): boolean {
  for (const words of classes.values()) if (words.has(word)) return true;
  return false;
}

function readSenses(table: string): ReadonlyMap<string, readonly Sense[]> {
  const found = new Map<string, Sense[]>();
  for (const { word, use, gloss } of rowsOf(table, ['word', 'use', 'gloss'])) {
    found.set(word, [...(found.get(word) ?? []), { use, gloss }]);
  }
  for (const [word, list] of found) if (list.length < 2) found.delete(word);
  return found;
}

function readRules(table: string): readonly Rule[] {
  const sequences = (cell: string): string[][] =>
    cell.trim() === '' ? [] : cell.split('|').map((each) => each.trim().split(' '));
  return rowsOf(table, ['words', 'use', 'before', 'after', 'anywhere']).map((row) => ({
    words: new Set(row.words.split(' ')),
    use: row.use,
    before: sequences(row.before),
    after: sequences(row.after),
    anywhere: row.anywhere.trim() === '' ? [] : row.anywhere.trim().split('|'),
  }));
}

function readClasses(table: string): Classes {
  return new Map(rowsOf(table, ['class', 'words']).map((row) => [row.class, new Set(row.words.split(' '))]));
}
