import { endings } from '../phonics/reading.ts';
import { isMark, plainMark } from '../sequence/punctuation-mark.ts';
import { isOneWord } from '../sequence/read-lesson.ts';
import { blends } from '../sequence/sequence.ts';

/** The items of a cell, and what in it is none. */
export interface ListRead {
  readonly items: readonly string[];
  readonly missed: readonly string[];
}

/** High-frequency words, set apart by anything. */
export function wordsIn(text: string): ListRead {
  return sorted(text.split(/[\s;,/|]+/), (word) => (isOneWord(word) ? word : undefined));
}

/** Endings, with or without a hyphen. */
export function endingsIn(text: string): ListRead {
  return sorted(text.split(/[\s;,/|]+/), (given) => {
    const wanted = given
      .toLowerCase()
      .replaceAll('’', "'")
      .replace(/^[-–~]|[-–~]$/g, '');
    return endings.find((ending) => ending === wanted);
  });
}

/** Places of blends, by the words that are used for them. */
export function blendsIn(text: string): ListRead {
  return sorted(text.split(/[;,/|\n]+|\band\b/i), (given) => {
    const wanted = given
      .toLowerCase()
      .replace(/\b(?:consonants?|blends?|clusters?|letters?|the|at|in|a|row)\b|-/g, ' ')
      .trim();
    return blends.find((blend) => blend === wanted) ?? otherNames.get(wanted);
  });
}

const otherNames = new Map<string, string>([
  ['initial', 'start'],
  ['beginning', 'start'],
  ['final', 'end'],
  ['ending', 'end'],
  ['3', 'three'],
]);

/** Punctuation marks, set apart by spaces, or by their names. */
export function marksIn(text: string): ListRead {
  let signs = text;
  for (const [name, mark] of markNames) signs = signs.replace(name, ` ${mark} `);
  const tokens = signs.split(/\s+/).flatMap((token) => {
    if (token === '' || isMark(token)) return [token];
    // Several marks without spaces: a comma or semicolon between them sets them apart.
    return /^[\p{P}\p{S}]+$/u.test(token) ? [...token].filter((sign) => !/[,;]/.test(sign)) : [token];
  });
  return sorted(tokens, (token) => (isMark(token) ? plainMark(token) : undefined));
}

const markNames: readonly (readonly [RegExp, string])[] = [
  [/question marks?[,;]?/gi, '?'],
  [/exclamation (?:marks?|points?)[,;]?/gi, '!'],
  [/(?:quotation|speech) marks?[,;]?/gi, '"'],
  [/commas?[,;]?/gi, ','],
  [/(?:full stops?|periods?)[,;]?/gi, '.'],
  [/apostrophes?[,;]?/gi, "'"],
  [/semicolons?[,;]?/gi, ';'],
  [/colons?[,;]?/gi, ':'],
  [/dash(?:es)?[,;]?/gi, '—'],
  [/ellips[ei]s[,;]?/gi, '…'],
];

function sorted(given: readonly string[], read: (item: string) => string | undefined): ListRead {
  const items: string[] = [];
  const missed: string[] = [];
  for (const text of given.map((each) => each.trim()).filter((each) => each !== '')) {
    const item = read(text);
    if (item === undefined) missed.push(text);
    else items.push(item);
  }
  return { items, missed };
}
