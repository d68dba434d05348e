import type { AlignedPart } from '../phonics/align.ts';
import { baseOf } from '../phonics/inflected-reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { allLetters, letterBits } from './letter-bits.ts';

/** The list of words with what a quick look at each needs. Words are named by their place in the list. */
export interface WordIndex {
  readonly words: readonly ListedWord[];
  /** For each word the letters that spellings have to supply, a bit a letter; those of endings do not count. */
  readonly letters: Int32Array;
  /** For a word with endings, what each of its readings is a form of; a reading without one has none there. */
  formsAt(place: number): readonly (FormOf | undefined)[] | undefined;
  /** The words that are put together from two others. */
  readonly compounds: readonly ListedCompound[];
  /** The places of a word and of its forms: *want*, *wants*, *wanted*. */
  placesOf(word: string): readonly number[];
}

/** What a form is made of. */
export interface FormOf {
  /** The base word's place; none when it is not in the list itself. */
  readonly base?: number;
}

/** A compound with the two words in it. */
export interface ListedCompound {
  readonly word: string;
  readonly halves: readonly [string, string];
}

/** Makes the index; it takes some tens of milliseconds and is worth keeping. */
export function indexWords(words: readonly ListedWord[]): WordIndex {
  const own = new Map(words.map(({ word }, place) => [word, place]));
  const forms = new Map<number, readonly (FormOf | undefined)[]>();
  const formsByBase = new Map<string, number[]>();
  words.forEach(({ word, inflection, readings }, place) => {
    if (readings.some((reading) => reading.inflection !== undefined)) {
      forms.set(
        place,
        readings.map(
          (reading) =>
            reading.inflection && formOf(word, { ...reading, inflection: reading.inflection }, own),
        ),
      );
    }
    if (inflection !== undefined) {
      const known = formsByBase.get(inflection.base);
      if (known === undefined) formsByBase.set(inflection.base, [place]);
      else known.push(place);
    }
  });
  const known = new Map<AlignedPart, number>();
  const bitsOf = (part: AlignedPart): number => {
    let bits = known.get(part);
    if (bits === undefined) {
      bits = letterBits(part.letters);
      known.set(part, bits);
    }
    return bits;
  };
  const letters = new Int32Array(words.length).fill(-1);
  const lettersAt = (place: number): number => {
    if (letters[place] === -1) {
      letters[place] =
        words[place]?.readings.reduce((all, { parts }, at) => {
          const form = forms.get(place)?.[at];
          const bits =
            form === undefined
              ? parts.reduce((own, part) => own | bitsOf(part), 0)
              : form.base === undefined
                ? 0
                : lettersAt(form.base);
          return all & bits;
        }, allLetters) ?? 0;
    }
    return letters[place] ?? 0;
  };
  for (let place = 0; place < words.length; place++) lettersAt(place);
  return {
    words,
    letters,
    compounds: words.flatMap(({ word, compound }) =>
      compound === undefined ? [] : [{ word, halves: compound }],
    ),
    formsAt: (place) => forms.get(place),
    placesOf: (word) => {
      const place = own.get(word);
      return [...(place === undefined ? [] : [place]), ...(formsByBase.get(word) ?? [])];
    },
  };
}

type Inflected = ListedWord['readings'][number] & {
  readonly inflection: NonNullable<ListedWord['readings'][number]['inflection']>;
};

function formOf(word: string, { parts, inflection }: Inflected, own: ReadonlyMap<string, number>): FormOf {
  const base = own.get(baseOf(word, parts, inflection));
  return base === undefined ? {} : { base };
}
