import { isVowel, type Phoneme } from '../../server/src/phonics/phoneme.ts';
import type { Part, Reading } from '../../server/src/phonics/reading.ts';

/** Whether a word follows a generalization; undefined when it says nothing of the word. */
export type Verdict = boolean | undefined;

/** A generalization by its number in Clymer 1963 (and its part, where the study counts parts), as a test of a word. */
export interface Generalization {
  readonly number: number;
  readonly part: string;
  test(word: string, reading: Reading): Verdict;
  /** The same by the sounds of the dictionary of 1963, where they explain a difference. */
  readonly asThen?: (word: string, reading: Reading) => Verdict;
}

const short: Readonly<Record<string, readonly string[]>> = {
  a: ['AE'],
  e: ['EH'],
  i: ['IH'],
  o: ['AA', 'AO'],
  u: ['AH'],
  y: ['IH'],
};
const long: Readonly<Record<string, readonly string[]>> = {
  a: ['EY'],
  e: ['IY'],
  i: ['AY'],
  o: ['OW'],
  u: ['UW', 'Y UW'],
  y: ['AY'],
};

/** All generalizations that letters, graphemes, sounds, syllables and stress decide. */
export const generalizations: readonly Generalization[] = [
  rule(1, 'all', (word, reading) => {
    const pair = /[aeiou]{2}/.exec(word);
    return pair ? firstIsLong(reading, pair.index) : undefined;
  }),
  rule(2, 'all', (word, reading) => (oneVowelInside(word, reading) ? vowelIs(reading, short) : undefined)),
  rule(3, 'all', (word, reading) => (/^[^aeiouy]+[aeiouy]$/.test(word) ? vowelIs(reading, long) : undefined)),
  rule(4, 'all', (word, reading) =>
    /^[^aeiouy]*[aeiou][^aeiouy]+e$/.test(word)
      ? saysLong(reading, word.search(/[aeiou]/)) && isMuteE(reading, word)
      : undefined,
  ),
  rule(5, 'all', (word, reading) => {
    const at = word.search(/[aeiou]r/);
    return at < 0 ? undefined : (partAt(reading, at)?.letters.includes('r') ?? false);
  }),
  rule(6, 'all', (word, reading) => teamIsLong(word, reading, /ai|ea|oa|ui/)),
  rule(6, 'ai', (word, reading) => teamIsLong(word, reading, /ai/)),
  rule(6, 'ea', (word, reading) => teamIsLong(word, reading, /ea/)),
  rule(
    6,
    'oa',
    (word, reading) => teamIsLong(word, reading, /oa/),
    // Board and roar have long o before r.
    (word, reading) => teamSays(word, reading, /oa/, ['OW', 'AO R']),
  ),
  rule(
    6,
    'ui',
    (word, reading) => teamIsLong(word, reading, /ui/),
    // Long u has its glide: in suit, not in fruit and juice.
    (word, reading) => (/ui/.test(word) ? /^sui/.test(word) && teamIsLong(word, reading, /ui/) : undefined),
  ),
  rule(
    7,
    'all',
    (word, reading) => teamSays(word, reading, /ie/, ['IY']),
    // The weak ie of cookie, berries and hurried is short i.
    (word, reading) =>
      teamSays(word, reading, /ie/, ['IY']) === true
        ? partAt(reading, word.indexOf('ie'))?.stress !== 0
        : teamSays(word, reading, /ie/, ['IY']),
  ),
  rule(8, 'all', (word, reading) => teamSays(word, reading, /ee/, ['IY'])),
  rule(9, 'all', (word, reading) =>
    /[ai][^aeiouy]+e$/.test(word) && isMuteE(reading, word)
      ? saysLong(reading, word.search(/[ai][^aeiouy]+e$/))
      : undefined,
  ),
  rule(
    10,
    'all',
    (word, reading) => teamSays(word, reading, /ay/, ['EY']),
    // Monday to Sunday, and yesterday, end in short i.
    (word, reading) =>
      /^(mon|tues|wednes|thurs|fri|satur|sun|yester)day$/.test(word)
        ? false
        : teamSays(word, reading, /ay/, ['EY']),
  ),
  rule(11, 'all', (word, reading) =>
    word.includes('igh') ? partAt(reading, word.indexOf('igh'))?.letters === 'igh' : undefined,
  ),
  rule(12, 'all', (word, reading) => {
    const at = word.search(/wa/);
    return at < 0 ? undefined : says(partAt(reading, at + 1), ['AA', 'AO', 'AH']);
  }),
  rule(
    13,
    'all',
    (word, reading) =>
      isOneGrapheme(word, reading, 'ew') ? teamSays(word, reading, /ew/, ['UW', 'Y UW']) : undefined,
    // New and dew have a glide, as few does, and oo has none.
    (word, reading) =>
      isOneGrapheme(word, reading, 'ew')
        ? teamSays(word, reading, /ew/, ['UW']) && !/[tdn]ew/.test(word)
        : undefined,
  ),
  rule(14, 'all', (word, reading) => teamSays(word, reading, /ow/, ['OW'])),
  rule(15, 'all', (word, reading) => {
    const at = word.search(/[aeo]w/);
    return at < 0 ? undefined : firstIsLong(reading, at);
  }),
  rule(16, 'all', (word, reading) => (/.y$/.test(word) ? reading.parts.at(-1)?.letters === 'y' : undefined)),
  rule(17, 'all', (_word, reading) => {
    const y = reading.parts.find((part) => part.letters === 'y' && part.sounds.some(isVowel));
    return y ? says(y, ['AY']) : undefined;
  }),
  rule(18, 'all', (word, reading) => {
    const at = word.search(/a[lwu]/);
    return at < 0 ? undefined : says(partAt(reading, at), ['AO', 'AA']);
  }),
  rule(19, 'all', (word, reading) =>
    /are$/.test(word) ? says(reading.parts.at(-1), ['EH R', 'AE R']) : undefined,
  ),
  rule(20, 'all', (word, reading) =>
    word.includes('ch') ? /ch/.test(partAt(reading, word.indexOf('ch'))?.letters ?? '') : undefined,
  ),
  rule(21, 'all', (word, reading) =>
    word.includes('ch') ? says(partAt(reading, word.indexOf('ch')), ['CH']) : undefined,
  ),
  rule(22, 'all', (word, reading) => letterSays(word, reading, /c[ei]/, ['S'])),
  rule(23, 'all', (word, reading) => letterSays(word, reading, /c[oa]/, ['K'])),
  rule(24, 'all', (word, reading) => letterSays(word, reading, /g[ei]/, ['JH'])),
  rule(25, 'all', (word, reading) =>
    word.includes('ght') ? (partAt(reading, word.indexOf('ght'))?.sounds.every(isVowel) ?? false) : undefined,
  ),
  rule(26, 'all', (word, reading) => (word.startsWith('kn') ? says(reading.parts[0], ['N']) : undefined)),
  rule(27, 'all', (word, reading) => (word.startsWith('wr') ? says(reading.parts[0], ['R']) : undefined)),
  rule(28, 'all', (word, reading) => {
    const at = word.search(/([bcdfgklmnprstvz])\1/);
    return at < 0 ? undefined : partAt(reading, at) === partAt(reading, at + 1);
  }),
  rule(29, 'all', (word, reading) => (word.endsWith('ck') ? says(reading.parts.at(-1), ['K']) : undefined)),
  rule(30, 'all', (_word, { syllables }) =>
    syllables.length === 2 ? syllables[0]?.stress === 1 : undefined,
  ),
  rule(31, 'all', (_word, { syllables }) =>
    syllables.length > 1 && /^(a|in|re|ex|de|be)$/.test(syllables[0]?.text ?? '')
      ? syllables[0]?.stress !== 1
      : undefined,
  ),
  rule(32, 'all', (word, { syllables }) =>
    syllables.length === 2 && /[^aeiou]y$/.test(word) ? syllables[0]?.stress === 1 : undefined,
  ),
  rule(33, 'all', (_word, reading) => {
    const accented = reading.syllables.findIndex(({ stress }) => stress === 1);
    const { text = '' } = reading.syllables[accented] ?? {};
    if ((text.match(/[aeiouy]/g) ?? []).length !== 1) return undefined;
    const from = reading.syllables
      .slice(0, accented)
      .reduce((sum, syllable) => sum + syllable.text.length, 0);
    const letter = text.search(/[aeiouy]/);
    return says(partAt(reading, from + letter), short[text[letter] ?? ''] ?? []);
  }),
  rule(
    34,
    'all',
    (word, reading) => (endsInWeakY(word, reading) ? says(reading.parts.at(-1), ['IY']) : undefined),
    // Baby ends in short i.
    (word, reading) => (endsInWeakY(word, reading) ? false : undefined),
  ),
  rule(35, 'all', (word, { syllables }) =>
    /.ture$/.test(word) && syllables.length > 1 ? syllables.at(-1)?.stress === 0 : undefined,
  ),
  rule(36, 'all', (word, { syllables }) =>
    /.tion$/.test(word) && syllables.length > 1 ? syllables.at(-1)?.stress === 0 : undefined,
  ),
  rule(37, 'all', (word, reading) => {
    const lastSyllable = reading.syllables.at(-1)?.text ?? '';
    if (
      reading.syllables.length < 2 ||
      !/[aeiou][^aeiouyr]+e$/.test(lastSyllable) ||
      lastSyllable.endsWith('le')
    )
      return undefined;
    return saysLong(reading, word.length - lastSyllable.length + lastSyllable.search(/[aeiou]/));
  }),
  rule(38, 'all', (word, { syllables }) => {
    const found = syllables.length > 1 ? /^[^aeiouy]*[aeiouy]([^aeiouy])[^aeiouy]/.exec(word) : null;
    return found ? syllables[0]?.text.length === found[0].length - 1 : undefined;
  }),
  rule(39, 'all', (word, { syllables }) => {
    const found = syllables.length > 1 ? /^[^aeiouy]*[aeiouy](?=[^aeiouy][aeiouy])/.exec(word) : null;
    return found ? syllables[0]?.text.length === found[0].length : undefined;
  }),
  rule(40, 'all', (word, { syllables }) =>
    /[^aeiouy]le$/.test(word) && syllables.length > 1 ? syllables.at(-1)?.text.length === 3 : undefined,
  ),
  rule(41, 'all', (word, { syllables }) => {
    const at = word.slice(1).search(/[aeiouy](ch|th|sh)[aeiouy]/);
    return at < 0 || syllables.length < 2 ? undefined : !bordersOf(syllables).includes(at + 3);
  }),
  rule(42, 'all', (word, { syllables }) => {
    const at = word.search(/[aeiouy]v[aeiouy]/);
    return at < 0 || syllables.length < 2 || !bordersNear(syllables, at)
      ? undefined
      : bordersOf(syllables).includes(at + 2);
  }),
  rule(43, 'all', (word, reading) =>
    (word.match(/[aeiouy]/g) ?? []).length === 1 ? vowelIs(reading, short) : undefined,
  ),
  rule(44, 'all', (word, reading) =>
    (word.match(/[aeiouy]/g) ?? []).join('') === 'e' && /[^aeiouy]$/.test(word)
      ? vowelIs(reading, short)
      : undefined,
  ),
  rule(45, 'all', (word, { syllables, parts }) =>
    syllables.length > 1 && /[aeiouy]r$/.test(word) && says(parts.at(-1), ['ER'])
      ? syllables.at(-1)?.stress === 0
      : undefined,
  ),
];

function rule(
  number: number,
  part: string,
  test: Generalization['test'],
  asThen?: Generalization['test'],
): Generalization {
  return { number, part, test, ...(asThen === undefined ? {} : { asThen }) };
}

function endsInWeakY(word: string, { syllables }: Reading): boolean {
  return /(y|ey)$/.test(word) && syllables.length > 1 && (syllables.at(-1)?.stress ?? 0) !== 1;
}

function isOneGrapheme(word: string, reading: Reading, letters: string): boolean {
  const at = word.indexOf(letters);
  return at >= 0 && partAt(reading, at) === partAt(reading, at + letters.length - 1);
}

function partAt({ parts }: Reading, at: number): Part | undefined {
  return parts.find(({ spans }) => spans.some(([start, end]) => at >= start && at < end));
}

function says(part: Part | undefined, sounds: readonly string[]): boolean {
  return part !== undefined && sounds.includes(part.sounds.join(' '));
}

function letterSays(word: string, reading: Reading, letters: RegExp, sounds: readonly string[]): Verdict {
  const at = word.search(letters);
  return at < 0 ? undefined : says(partAt(reading, at), sounds);
}

function teamSays(word: string, reading: Reading, team: RegExp, sounds: readonly string[]): Verdict {
  const at = word.search(team);
  return at < 0 ? undefined : says(partAt(reading, at), sounds);
}

function teamIsLong(word: string, reading: Reading, team: RegExp): Verdict {
  const at = word.search(team);
  return at < 0 ? undefined : firstIsLong(reading, at);
}

/** The vowel at `at` says its long sound for itself and the letter after it. */
function firstIsLong(reading: Reading, at: number): boolean {
  const part = partAt(reading, at);
  return part !== undefined && part === partAt(reading, at + 1) && saysLong(reading, at);
}

function saysLong(reading: Reading, at: number): boolean {
  const part = partAt(reading, at);
  return part !== undefined && says(part, long[part.letters[0] ?? ''] ?? []);
}

function vowelIs(reading: Reading, kind: Readonly<Record<string, readonly string[]>>): boolean {
  const part = reading.parts.find(({ letters }) => /[aeiouy]/.test(letters) && !/^(qu|gu)$/.test(letters));
  const letter = part?.letters.match(/[aeiouy]/)?.[0] ?? '';
  return part?.letters.length === 1 && says(part, kind[letter] ?? []);
}

function isMuteE(reading: Reading, word: string): boolean {
  const sounds: readonly Phoneme[] = partAt(reading, word.length - 1)?.sounds ?? [];
  return (partAt(reading, word.length - 1)?.letters ?? 'e') !== 'e' || sounds.length === 0;
}

function oneVowelInside(word: string, { syllables }: Reading): boolean {
  return syllables.length === 1 && /^[^aeiouy]+[aeiouy][^aeiouy]+$/.test(word);
}

function bordersOf(syllables: Reading['syllables']): readonly number[] {
  let at = 0;
  return syllables.map(({ text }) => {
    at += text.length;
    return at;
  });
}

function bordersNear(syllables: Reading['syllables'], at: number): boolean {
  return bordersOf(syllables).some((border) => border === at + 1 || border === at + 2);
}
