/** The letters of a text as bits: 1 for a, 2 for b, 4 for c. */
export function letterBits(text: string): number {
  let bits = 0;
  for (let at = 0; at < text.length; at++) {
    const letter = text.charCodeAt(at) - 97;
    if (letter >= 0 && letter < 26) bits |= 1 << letter;
  }
  return bits;
}

/** All letters. */
export const allLetters = (1 << 26) - 1;
