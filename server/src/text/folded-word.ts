/** A word as word lists compare it: lower case, every apostrophe straight. Its length may differ from the word's. */
export function foldedWord(word: string): string {
  const lower = word.toLowerCase();
  // Most words hold no curly apostrophe, and looking for one is much cheaper than replacing none.
  return isPlain(lower) ? lower : lower.replace(/[\u2018\u2019\u02bc]/g, "'");
}

function isPlain(word: string): boolean {
  for (let at = 0; at < word.length; at++) {
    if (word.charCodeAt(at) >= 0x2bc) return false;
  }
  return true;
}
