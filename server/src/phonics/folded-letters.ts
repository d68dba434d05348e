/** A word as the lexicon has it, with the way back to the word as written. */
export interface FoldedLetters {
  /** Lower case a to z and straight apostrophes; all else is gone. */
  readonly letters: string;
  /** For each letter its UTF-16 offset in the word, and one more: the word's length. */
  readonly places: readonly number[];
  /** True when letters and word agree place by place. */
  readonly isPlain: boolean;
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
