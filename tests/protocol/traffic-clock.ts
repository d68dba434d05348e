/** A story whose one word names the tick, so that what is said of an earlier text is known by its words. */
export function clockText(tick: number): string {
  return `---\nlesson: "2"\n---\nThe map sat at ${clockWord(tick)}.\n`;
}

/** The word of a tick, in letters. */
export function clockWord(tick: number): string {
  return `Night${[...String(tick)].map((digit) => 'abcdefghij'[Number(digit)]).join('')}q`;
}

/** The tick of a word's letters. */
export function numberOf(letters: string): number {
  return Number([...letters.toLowerCase()].map((letter) => 'abcdefghij'.indexOf(letter)).join(''));
}
