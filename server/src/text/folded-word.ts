/** A word as word lists compare it: lower case, every apostrophe straight. Its length may differ from the word's. */
export function foldedWord(word: string): string {
  return word.toLowerCase().replace(/[\u2018\u2019\u02bc]/g, "'");
}
