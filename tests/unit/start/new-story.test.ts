import { expect, test } from 'vitest';
import { newStory, storyFileName } from '../../../server/src/start/new-story.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { pondPhonics } from '../../support/pond-phonics.ts';
import { reviewed } from '../../support/reviewed.ts';

const sequence = `lessons:
  - name: "1"
    spellings: [p as in pond]
    high-frequency words: [the]
`;

test.each([1, 2, 5])('a new story of %i pages has them, and nothing yet for the child', (pages) => {
  const story = readStory(newStory({ title: 'A Hen: "Peck!"', lesson: '1', pages }));
  expect(story.pages).toHaveLength(pages);
  expect(story.frontMatter.title?.value).toBe('A Hen: "Peck!"');
  expect(story.frontMatter.lesson?.value).toBe('1');
  expect(story.pages.flatMap(({ page }) => page.sentences)).toEqual([]);
});

test('a new story has no errors; what is open are the targets of its lesson', () => {
  const review = reviewed(newStory({ title: 'A Hen', lesson: '1', pages: 3 }), sequence, pondPhonics);
  expect(review.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(review.findings.map(({ rule }) => rule)).toEqual(['missing-high-frequency-word', 'little-practice']);
});

test.each([
  { title: 'The Tin Man', lesson: '4', file: '04-the-tin-man.md' },
  { title: "Tam's ../Pot?", lesson: '12', file: '12-tams-pot.md' },
  { title: 'Café', lesson: 'unit 2', file: 'unit-2-cafe.md' },
  { title: '???', lesson: '', file: 'story.md' },
])('the file of $title at lesson $lesson is $file', ({ file, ...wish }) => {
  expect(storyFileName(wish)).toBe(file);
});
