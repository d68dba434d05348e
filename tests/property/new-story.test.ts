import { expect, test } from 'vitest';
import type { Review } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../server/src/sequence/teaching.ts';
import { beginSequence } from '../../server/src/start/begin-sequence.ts';
import { newStory } from '../../server/src/start/new-story.ts';
import { storyFileName } from '../../server/src/start/story-file-name.ts';
import { sequenceText } from '../../server/src/start/write-sequence.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { createWordFinders } from '../../server/src/words/word-finders.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { sampleTeaching } from '../support/sample-lessons.ts';

const finders = createWordFinders(packagePhonics);

/** A new story of a lesson, and what `check` says of it. */
function begun(teaching: Teaching, lesson: string, pages: number, title = 'A Hen: "Peck!"') {
  const taught = teaching.taughtAt(lesson);
  if (taught === undefined) throw new Error(`There is no lesson ${lesson}.`);
  const made = newStory({ title, lesson, pages }, taught, finders(teaching), packagePhonics);
  const review: Review = reviewStory({ story: readStory(made.text), taught, phonics: packagePhonics });
  return { ...made, review };
}

const lessons = sampleTeaching.sequence.lessons.map(({ name }) => name);

test.each(lessons)('a new story has no finding at lesson %s of the sample sequence', (lesson) => {
  for (const pages of [1, 2, 5, 8, 20]) {
    const { review } = begun(sampleTeaching, lesson, pages);
    expect([pages, ...review.findings.map(({ message }) => message)]).toEqual([pages]);
    expect(review.passes).toBe(true);
    expect(review.counts.words).toBeGreaterThan(0);
  }
});

test.each(['many-words', 'held-first'] as const)(
  'a new story has no finding at any lesson of a sequence that was begun with %s',
  (consonants) => {
    const choices = {
      title: 'Willow Lane',
      vowels: 'apart',
      consonants,
      pace: 'large',
      blends: 'before',
      endings: 'taught',
      words: 2,
      lessons: 99,
    } as const;
    const teaching = teachingOf(readSequence(sequenceText(beginSequence(choices))), packagePhonics);
    for (const { name } of teaching.sequence.lessons) {
      const messages = begun(teaching, name, 6).review.findings.map(({ message }) => message);
      expect([name, ...messages]).toEqual([name]);
    }
  },
);

test.each([3, 8, 20])('it has the %i pages that were asked for, each with a line and a note', (pages) => {
  const { text, review } = begun(sampleTeaching, '13', pages);
  const story = readStory(text);
  expect(story.pages).toHaveLength(pages);
  for (const { page } of story.pages) expect(page.sentences.length).toBeGreaterThan(0);
  expect(text.match(/^> For you, who write: /gm)).toHaveLength(pages);
  expect(review.story.frontMatter.title?.value).toBe('A Hen: "Peck!"');
});

test('it has more pages where one cannot hold what the lesson asks', () => {
  const { pages, review } = begun(sampleTeaching, '1', 1);
  expect(pages).toBe(2);
  expect(review.pages).toHaveLength(2);
});

test('the lines are sentences where sentences can be made', () => {
  const { text } = begun(sampleTeaching, '23', 4);
  expect(text).toMatch(/^We both \w+\.$/m);
  expect(text).toMatch(/^I don't \w+\.$/m);
});

test('without a word that can be read there are only notes', () => {
  const teaching = teachingOf(
    readSequence('lessons:\n  - name: "1"\n    spellings: [p as in pond]\n'),
    packagePhonics,
  );
  const { text, review } = begun(teaching, '1', 2);
  expect(review.counts.words).toBe(0);
  expect(readStory(text).pages).toHaveLength(2);
});

test.each([
  { title: 'The Tin Man', lesson: '4', file: '04-the-tin-man.md' },
  { title: "Tam's ../Pot?", lesson: '12', file: '12-tams-pot.md' },
  { title: 'Café', lesson: 'unit 2', file: 'unit-2-cafe.md' },
  { title: '???', lesson: '', file: 'story.md' },
])('the file of $title at lesson $lesson is $file', ({ file, ...wish }) => {
  expect(storyFileName(wish)).toBe(file);
});
