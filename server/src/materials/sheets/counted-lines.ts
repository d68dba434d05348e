import type { Sentence } from '../../story/story.ts';
import { typographic } from '../layout/typographic.ts';

/** How many words of a sentence each of the lines it is broken into holds, counted as the review counts words. */
export function wordsOnLines(lines: readonly string[], { words }: Sentence): readonly number[] {
  const counts = lines.map(() => 0);
  const ends: number[] = [];
  let length = 0;
  for (const line of lines) {
    length += line.length + 1;
    ends.push(length);
  }
  const whole = lines.join(' ');
  let at = 0;
  for (const word of words) {
    const found = whole.indexOf(typographic(word.text).replace(/^‘/, '’'), at);
    // A word that is printed otherwise than it stands in the text comes right behind the word before it.
    const place = found === -1 ? at : found;
    const line = ends.findIndex((end) => place < end);
    const index = line === -1 ? counts.length - 1 : line;
    counts[index] = (counts[index] ?? 0) + 1;
    at = found === -1 ? at : found + word.text.length;
  }
  return counts;
}
