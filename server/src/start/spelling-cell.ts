import type { Phonics } from '../phonics/phonics.ts';

/** What the spelling cells of a lesson come to. */
export interface SpellingsRead {
  readonly cells: readonly {
    /** Each as `ai as in rain`. */
    readonly items: readonly string[];
    /** Those among them that were given without a key word. */
    readonly supplied: readonly string[];
    /** What is no spelling. */
    readonly missed: readonly string[];
  }[];
  /** Key words of the lesson that no spelling took. */
  readonly unused: readonly string[];
}

/** Reads the spellings of one lesson after another; knows which usual key words have been given out. */
export type SpellingReader = (texts: readonly string[], keyWords: readonly string[]) => SpellingsRead;

/** Makes the reader of one table. */
export function createSpellingReader(phonics: Pick<Phonics, 'commonSpellings'>): SpellingReader {
  const common = new Map<string, string[]>();
  for (const { letters, keyWord } of phonics.commonSpellings())
    common.set(letters, [...(common.get(letters) ?? []), keyWord]);
  const givenOut = new Set<string>();
  return (texts, keyWords) => {
    const cells = texts.map((text) => itemsIn(text).map(readItem));
    const bare = cells.flat().filter((item) => item?.keyWord === undefined).length;
    const left = [...keyWords];
    let place = 0;
    const ownKeyWord = (letters: string): string | undefined => {
      // As many key words as letters belong to each other in their order; otherwise the letters tell.
      const at =
        keyWords.length === bare
          ? left.indexOf(keyWords[place] ?? '')
          : left.findIndex((word) => holds(word, letters));
      place += 1;
      return at === -1 ? undefined : left.splice(at, 1)[0];
    };
    const usualKeyWord = (letters: string): string | undefined => {
      const usual = common.get(letters);
      return usual?.find((keyWord) => !givenOut.has(`${letters} as in ${keyWord}`)) ?? usual?.[0];
    };
    const read = cells.map((items, index) => {
      const pieces = itemsIn(texts[index] ?? '');
      const found: string[] = [];
      const supplied: string[] = [];
      const missed: string[] = [];
      items.forEach((item, at) => {
        if (item === undefined) {
          missed.push(pieces[at] ?? '');
          return;
        }
        const own = item.keyWord ?? ownKeyWord(item.letters);
        const keyWord = own ?? usualKeyWord(item.letters);
        if (keyWord === undefined) {
          missed.push(pieces[at] ?? '');
          return;
        }
        const line = `${item.letters} as in ${keyWord}`;
        givenOut.add(line);
        found.push(line);
        if (own === undefined) supplied.push(line);
      });
      return { items: found, supplied, missed };
    });
    const more = cells.flat().flatMap((item) => item?.more?.replace(/^[\s,;/]+/, '').trim() ?? []);
    return { cells: read, unused: [...left, ...more] };
  };
}

interface Item {
  readonly letters: string;
  readonly keyWord?: string;
  /** Further words in the brackets of the key word. */
  readonly more?: string;
}

/** The items of a cell: set apart by semicolons, commas or lines, but not inside brackets. */
function itemsIn(text: string): readonly string[] {
  return (
    text
      // Bounded, so that a long cell is not searched to its end from each comma.
      .split(/[;,\n](?![^(]{0,100}\))/)
      .map((item) => item.trim())
      .filter((item) => item !== '')
  );
}

function readItem(text: string): Item | undefined {
  if (text.length > longestItem) return undefined;
  for (const form of forms) {
    const [, given = '', keyWord, more = ''] = form.exec(text) ?? [];
    const letters = lettersOf(given);
    if (letters !== undefined)
      return { letters, ...(keyWord === undefined ? {} : { keyWord }), ...(/\w/.test(more) ? { more } : {}) };
  }
  return undefined;
}

/** UTF-16 units; what is longer is a note that somebody wrote into the cell. */
const longestItem = 120;

const word = "([a-z]+(?:['’-][a-z]+)*)";
const forms: readonly RegExp[] = [
  new RegExp(`^(\\S+)\\s+(?:as\\s+)?in\\s+${word}$`, 'i'),
  new RegExp(`^(\\S+)\\s*\\(\\s*(?:as\\s+in\\s+)?${word}([^)]*)\\)$`, 'i'),
  new RegExp(`^(\\S+?)\\s*[:=–—→]\\s*${word}$`, 'i'),
  new RegExp(`^(\\S+)\\s+-\\s+${word}$`, 'i'),
  /^(?:short\s+)?(\S+)$/i,
];

/** `sh` of `/sh/`, `<sh>`, `-sh` and “SH”; `a_e` of `a-e`. */
function lettersOf(given: string): string | undefined {
  const bare = given
    .toLowerCase()
    .replace(/^[/<“"'‘[-]+|[/>”"'’\]-]+$/g, '')
    .replace(/^([aeiouy])[-–]e$/, '$1_e');
  return /^[a-z]+(?:_[a-z]+)*$/.test(bare) ? bare : undefined;
}

function holds(keyWord: string, letters: string): boolean {
  return new RegExp(letters.replaceAll('_', '[a-z]+')).test(keyWord.toLowerCase());
}
