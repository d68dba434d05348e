/** A word as the lexicon has it, with the way back to the word as written. */
export interface FoldedLetters {
  /** Lower case a to z and straight apostrophes; all else is gone. */
  readonly letters: string;
  /** For each letter its UTF-16 offset in the word, and one more: the word's length. */
  readonly places: readonly number[];
  /** True when letters and word agree place by place. */
  readonly isPlain: boolean;
  /** True for a word that is drawn out, *Nooo*, when these are the letters of the word it is. */
  readonly isDrawnOut?: boolean;
}

/** Folds capitals, accents and apostrophes; keeps each letter's place. */
export function folded(word: string): FoldedLetters {
  const lower = word.toLowerCase();
  if (/^[a-z']*$/.test(lower) && lower.length === word.length) {
    return { letters: lower, places: [], isPlain: true };
  }
  let letters = '';
  const places: number[] = [];
  for (let at = 0; at < word.length; ) {
    const character = String.fromCodePoint(word.codePointAt(at) ?? 0);
    const base = plainLetters(character);
    for (const letter of base) {
      letters += letter;
      places.push(at);
    }
    at += character.length;
  }
  places.push(word.length);
  const isPlain = places.every((place, index) => place === index);
  return { letters, places, isPlain };
}

/**
 * A word that is drawn out, *beeeep* or *Nooo*: what it is with at most `most` like letters in a row. Nothing when no letter
 * stands three times in a row, or none of its letters is a vowel.
 */
export function unstretched({ letters, places }: FoldedLetters, most: 1 | 2): FoldedLetters | undefined {
  if (!/([a-z])\1\1/.test(letters) || !/[aeiouy]/.test(letters)) return undefined;
  let kept = '';
  const keptPlaces: number[] = [];
  for (const { 0: run, index } of letters.matchAll(/([a-z'])\1*/g)) {
    const length = run.length > 2 ? most : run.length;
    kept += run.slice(0, length);
    for (let at = index; at < index + length; at++) keptPlaces.push(places[at] ?? at);
  }
  keptPlaces.push(places[letters.length] ?? letters.length);
  return { letters: kept, places: keptPlaces, isPlain: false, isDrawnOut: true };
}

function plainLetters(character: string): string {
  if (character === '\u2019' || character === '\u2018' || character === '\u02bc') return "'";
  const special: Readonly<Record<string, string>> = {
    æ: 'ae',
    Æ: 'ae',
    œ: 'oe',
    Œ: 'oe',
    ß: 'ss',
    ø: 'o',
    Ø: 'o',
    đ: 'd',
    ł: 'l',
    Ł: 'l',
  };
  return (
    special[character] ??
    character
      .normalize('NFD')
      .toLowerCase()
      .replace(/[^a-z']/g, '')
  );
}
