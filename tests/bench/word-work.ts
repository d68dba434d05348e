import { readFileSync } from 'node:fs';
import { buildChain } from '../../server/src/chains/build-chain.ts';
import { fitText } from '../../server/src/fit/fit-text.ts';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { createWordFinder } from '../../server/src/words/find-words.ts';
import type { WordQuery } from '../../server/src/words/word-query.ts';
import { type Spread, spreadOf, timed } from './measures.ts';
import { storyOf } from './stories.ts';

/** A figure of work with words in process, with the limit it has to keep, in milliseconds. */
export interface WordFigure {
  readonly figure: string;
  readonly spread: Spread;
  /** Absent where none is set. */
  readonly limit?: number;
}

/** What a writer may ask the finder for. */
const queries: Readonly<Record<string, WordQuery>> = {
  'the first 200': { limit: 200 },
  'new ones': { isNew: true, limit: 200 },
  'with sh at the end': { spelling: { letters: 'sh' }, place: 'end', limit: 200 },
  'of two syllables': { syllables: { least: 2, most: 2 }, limit: 200 },
  'with the rare sound ZH': { sound: 'ZH', limit: 200 },
};

/** Measures the word finder, chains and fit at every lesson of the sample sequence, after one round that is not counted. */
export async function measureWordWork(): Promise<readonly WordFigure[]> {
  const phonics = loadPhonics();
  const text = readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8');
  const teaching = teachingOf(readSequence(text), phonics);
  const finder = createWordFinder(teaching, phonics);
  const lessons = teaching.sequence.lessons.map((lesson) => teaching.taughtBy(lesson));
  const atEveryLesson = async (task: (taught: (typeof lessons)[number]) => unknown): Promise<Spread> => {
    const times: number[] = [];
    for (const taught of lessons) await timed(() => task(taught));
    for (const taught of lessons) times.push(await timed(() => task(taught)));
    return spreadOf(times);
  };
  const figures: WordFigure[] = [];
  const [early] = lessons;
  const first = await timed(() => early && finder.find(early, { limit: 200 }));
  figures.push({ figure: 'words, the first query of all', spread: spreadOf([first]) });
  for (const [name, query] of Object.entries(queries)) {
    const spread = await atEveryLesson((taught) => finder.find(taught, query));
    figures.push({ figure: `words ${name}, a lesson`, spread, limit: 100 });
  }
  figures.push({
    figure: 'chain of 10 words, a lesson',
    spread: await atEveryLesson((taught) => buildChain(finder, taught, phonics, { length: 10, seed: 1 })),
    limit: 1000,
  });
  figures.push({
    figure: 'chain of 100 words, a lesson',
    spread: await atEveryLesson((taught) => buildChain(finder, taught, phonics, { length: 100, seed: 1 })),
    limit: 2000,
  });
  const texts: Readonly<Record<string, string>> = {
    'a story of 300 words': storyOf(300, '14', 1),
    'a text of 2,000 different words': phonics.words
      .all()
      .slice(0, 2000)
      .map(({ word }) => word)
      .join('. '),
  };
  for (const [name, source] of Object.entries(texts)) {
    const story = readStory(source);
    figures.push({
      figure: `fit of ${name}`,
      spread: await atEveryLesson(() => fitText(story, teaching, phonics)),
      limit: 500,
    });
  }
  return figures;
}
