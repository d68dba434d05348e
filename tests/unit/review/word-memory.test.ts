import { describe, expect, it } from 'vitest';
import type { Review } from '../../../server/src/review/review.ts';
import { reviewStory } from '../../../server/src/review/review-story.ts';
import { createWordMemory, type WordMemory } from '../../../server/src/review/word-memory.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { packagePhonics as phonics } from '../../support/package-phonics.ts';
import { taughtAt } from '../../support/reviewed.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [m as in map, a as in map, t as in top, e as in ten, r as in rug, d as in dog, s as in sun, n as in nap]
    high-frequency words: [the]
  - name: "2"
    spellings: [ea as in eat]
`;

/** Front matters that say different things of the same words, and sentences in which *read* has either of its sounds. */
const frontMatters = [
  '',
  'names: [Zim]\n',
  'story words: {moon: a light}\n',
  'pronunciations: {moon: m-oo-n}\n',
];
const bodies = [
  'The moon sat. Zim sat at the tram.\n',
  'Dad read the mat. The moon!\n',
  'I will read at the moon.\n',
];

function reviewed(lesson: string, text: string, memory?: WordMemory): Review {
  const taught = lessons[lesson];
  if (taught === undefined) throw new Error(`No lesson ${lesson}.`);
  return reviewStory({ story: readStory(text), taught, phonics, ...(memory && { memory }) });
}

const lessons: Readonly<Record<string, ReturnType<typeof taughtAt>>> = {
  '1': taughtAt(sequence, '1', phonics),
  '2': taughtAt(sequence, '2', phonics),
};

function told({ findings, counts, pages, passes }: Review): unknown {
  const words = pages.flatMap((page) =>
    page.reviewed.words.map(({ word, kind, isNew, reading, missing, newSpellings }) => ({
      word,
      kind,
      isNew,
      sounds: reading?.parts.map(({ sounds }) => sounds),
      missing: missing.map((lack) => ({ ...lack, lesson: lack.lesson?.name })),
      newSpellings: newSpellings.map(({ line }) => line.letters),
    })),
  );
  return { findings, counts, passes, words };
}

describe('a memory of words', () => {
  it('leaves no trace in the reviews, whatever they declare and at whatever lesson', () => {
    const memory = createWordMemory();
    for (const round of [1, 2]) {
      for (const lesson of ['1', '2']) {
        for (const frontMatter of frontMatters) {
          for (const body of bodies) {
            const text = `---\nlesson: "${lesson}"\n${frontMatter}---\n${body}`;
            const [remembering, plain] = [reviewed(lesson, text, memory), reviewed(lesson, text)];
            expect({ round, text, ...(told(remembering) as object) }).toEqual({
              round,
              text,
              ...(told(plain) as object),
            });
          }
        }
      }
    }
  });

  it('gives one verdict to a word wherever it is met', () => {
    const memory = createWordMemory();
    const [first, second] = ['The mat sat.', 'A mat!'].map((body) =>
      reviewed('1', `---\nlesson: "1"\n---\n${body}\n`, memory)
        .pages.flatMap((page) => page.reviewed.words)
        .find(({ word }) => word.text === 'mat'),
    );
    expect(first?.newSpellings).toBe(second?.newSpellings);
  });
});
