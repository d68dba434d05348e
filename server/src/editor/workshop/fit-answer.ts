import type { UnreadWord } from '../../fit/fit.ts';
import { fitText } from '../../fit/fit-text.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import { missingLabel } from '../../review/wording.ts';
import type { Teaching } from '../../sequence/teaching.ts';
import { readStory } from '../../story/read-story.ts';
import type { FitAnswer, NoAnswer } from './protocol.ts';

/** How a text stands at every lesson of a sequence. */
export function fitAnswer(text: string, teaching: Teaching, phonics: Phonics): FitAnswer | NoAnswer {
  const fit = fitText(readStory(text), teaching, phonics);
  if (fit.words === 0) return { message: 'There is no word in this text.' };
  const { lessons } = teaching.sequence;
  const before = lessons[(fit.first?.lesson.index ?? lessons.length) - 1];
  const heldBack = before && fit.heldBackAt(before);
  return {
    words: fit.words,
    differentWords: fit.differentWords,
    lessons: fit.lessons.map(({ lesson, readable, target, reachesTarget }) => ({
      name: lesson.name,
      readable,
      target,
      reaches: reachesTarget,
    })),
    ...(fit.first && { first: fit.first.lesson.name }),
    ...(fit.lasting && { lasting: fit.lasting.lesson.name }),
    ...(heldBack && {
      heldBack: {
        lesson: heldBack.fit.lesson.name,
        readable: heldBack.fit.readable,
        things: heldBack.things.slice(0, 8).map(({ missing, rise, words }) => ({
          label: missingLabel(missing),
          rise,
          words: mostFrequent(words),
        })),
        declared: mostFrequent(heldBack.declared),
        never: mostFrequent(heldBack.never),
      },
    }),
  };
}

function mostFrequent(words: readonly UnreadWord[]): readonly string[] {
  return words.slice(0, 6).map(({ text }) => text);
}
