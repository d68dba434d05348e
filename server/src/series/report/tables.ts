import { gapMessage, spellingLabel } from '../gap-wording.ts';
import type { Row, Series } from '../series.ts';
import { shortfall } from '../standing.ts';
import type { Cell } from './csv.ts';

/** The tables of a series, by their names; the first is meant when none is named. */
export const tableNames = ['stories', 'spellings', 'high-frequency-words', 'words', 'gaps'] as const;
/** The name of a table. */
export type TableName = (typeof tableNames)[number];

/** The rows of a table, its headings first. Shares are percentages, exact. */
export function tableOf(series: Series, name: TableName): readonly (readonly Cell[])[] {
  switch (name) {
    case 'stories':
      return storyTable(series);
    case 'spellings':
      return matrix(series, 'Spelling', series.spellings, spellingLabel);
    case 'high-frequency-words':
      return matrix(series, 'Word', series.highFrequencyWords, ({ word }) => word);
    case 'words':
      return wordTable(series);
    case 'gaps':
      return [['Gap', 'What is missing'], ...series.gaps.map((gap) => [gap.kind, gapMessage(gap)])];
  }
}

function storyTable({ stories }: Series): readonly (readonly Cell[])[] {
  return [
    [
      'Lesson',
      'Title',
      'File',
      'Passes',
      'Readable %',
      'Target %',
      'Decodable %',
      'Words',
      'Pages',
      'Sentences',
      'Words a sentence',
      'Longest sentence',
      'Different words',
      'New words',
      'Different words so far',
      'Not taught',
      'Names',
      'Story words',
      'Flesch-Kincaid grade',
      'Spache grade',
      'Falls short of',
    ],
    ...stories.map(({ story, newWords, wordsSoFar }) => [
      story.lesson.name,
      story.title,
      story.path,
      story.passes ? 'yes' : 'no',
      story.readable * 100,
      story.target * 100,
      story.decodable * 100,
      story.counts.words,
      story.pages,
      story.sentences.count,
      story.sentences.mean,
      story.sentences.longest,
      story.words.length,
      newWords.length,
      wordsSoFar,
      story.counts['not-taught'],
      story.counts.name,
      story.counts['story-word'],
      story.readability.fleschKincaid,
      story.readability.spache,
      shortfall(story),
    ]),
  ];
}

function matrix<Thing extends { readonly lesson: { readonly name: string } }>(
  { stories }: Series,
  heading: string,
  rows: readonly Row<Thing>[],
  label: (thing: Thing) => string,
): readonly (readonly Cell[])[] {
  return [
    [
      heading,
      'Lesson',
      'Uses',
      'Stories',
      ...stories.map(({ story }) => `${story.lesson.name}: ${story.title}`),
    ],
    ...rows.map(({ thing, uses, total, stories: used }) => [
      label(thing),
      thing.lesson.name,
      total,
      used,
      ...uses,
    ]),
  ];
}

function wordTable({ words }: Series): readonly (readonly Cell[])[] {
  return [
    ['Word', 'First lesson', 'First story', 'File', 'Count', 'Stories', 'Kind', 'Parts', 'Syllables'],
    ...words.map(({ first, firstStory, count, stories }) => [
      first.text,
      firstStory.lesson.name,
      firstStory.title,
      firstStory.path,
      count,
      stories,
      first.kind,
      first.reading?.parts.map(({ letters }) => letters).join(' '),
      first.reading?.syllables.length,
    ]),
  ];
}
