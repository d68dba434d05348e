import type { Part } from '../../phonics/reading.ts';
import type { StudioStory } from '../layout/studio.ts';

/** A place in the row of a word: a box for what a grapheme says, or the late letters of a split one, without a box. */
export interface SoundBox {
  /** Its letters; those of a silent neighbour with it. Of a split grapheme those before the low line. */
  readonly letters: string;
  /** How many sounds it says, and so how many boxes it takes; 0 for the e of *cake*, which stands behind the k. */
  readonly sounds: number;
  /** The place of its grapheme in the word, from 0. */
  readonly grapheme: number;
}

/**
 * The boxes of a word with its graphemes, as many as it has sounds, with the late letters of split graphemes where they stand:
 * c, a, k and e. The letters are those of the word, capitals as it has them.
 */
export function soundBoxes(word: string, parts: readonly Part[]): readonly SoundBox[] {
  const boxes: SoundBox[] = [];
  let silent = '';
  let last = -1;
  for (const { letters, sounds, grapheme, isLate } of runsInOrder(word, parts)) {
    const before = boxes[last];
    if (isLate) boxes.push({ letters, sounds: 0, grapheme });
    else if (sounds > 0) {
      last = boxes.push({ letters: silent + letters, sounds, grapheme }) - 1;
      silent = '';
    } else if (before === undefined) silent += letters;
    else boxes[last] = { ...before, letters: before.letters + letters };
  }
  return boxes;
}

/** The boxes of a word of a story, their letters as they are printed. */
export function printedBoxes(story: StudioStory, word: string, parts: readonly Part[]): readonly SoundBox[] {
  return soundBoxes(word, parts).map((box) => ({ ...box, letters: story.text(box.letters) }));
}

interface Run {
  readonly at: number;
  readonly letters: string;
  readonly sounds: number;
  readonly grapheme: number;
  readonly isLate: boolean;
}

function runsInOrder(word: string, parts: readonly Part[]): readonly Run[] {
  return parts
    .flatMap(({ sounds, spans }, grapheme) =>
      spans.map(([start, end], index) => ({
        at: start,
        letters: word.slice(start, end),
        sounds: index === 0 ? sounds.length : 0,
        grapheme,
        isLate: index > 0,
      })),
    )
    .sort((one, other) => one.at - other.at);
}

/** How many sounds a row of boxes has. */
export function countOfSounds(boxes: readonly SoundBox[]): number {
  return boxes.reduce((sum, { sounds }) => sum + sounds, 0);
}

/** True when letters of a row stand without a box. */
export function hasLateLetters(boxes: readonly SoundBox[]): boolean {
  return boxes.some(({ sounds }) => sounds === 0);
}
