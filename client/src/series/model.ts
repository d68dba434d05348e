import type {
  SeriesAnswer,
  SeriesPlace,
  SeriesRow,
  SeriesStory,
} from '../../../server/src/editor/series/protocol.ts';
import { shownShare } from '../../../server/src/review/figures.ts';
import { counted } from '../gauge/figures.ts';

/** A cell of a grid. */
export interface CellModel {
  readonly text: string;
  /** What a screen reader says in place of the text, where that says too little. */
  readonly name?: string;
  /** Shown when the pointer rests on it. */
  readonly hint?: string;
  readonly className?: string;
  /** What Enter or a click opens. */
  readonly opens?: { readonly uri: string; readonly place: SeriesPlace };
}

/** A column of a grid. */
export interface ColumnModel extends CellModel {
  /** In CSS pixels. */
  readonly width: number;
}

/** A table whose cells are made when they come into sight. The first column names the rows and stays in sight. */
export interface GridModel {
  readonly columns: readonly ColumnModel[];
  readonly rows: number;
  cell(row: number, column: number): CellModel;
}

/** A bar for each story. */
export interface ChartModel {
  readonly title: string;
  readonly description: string;
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly bars: readonly {
    readonly value: number;
    /** A line across the bar. */
    readonly mark?: number;
    readonly fallsShort: boolean;
    readonly hint: string;
    readonly uri: string;
  }[];
}

/** How many stories pass. */
export function storiesVerdict({ stories }: SeriesAnswer): string {
  const short = stories.filter(({ passes }) => !passes).length;
  const all = counted(stories.length, 'story', 'stories');
  if (short === 0) return `${all}, all pass`;
  return `${all}, ${short} of them ${short === 1 ? 'falls' : 'fall'} short of a target`;
}

/** The figures of a whole series in a sentence. */
export function seriesSummary(answer: SeriesAnswer): string {
  const { stories, spellings, highFrequencyWords, differentWords } = answer;
  const running = stories.reduce((sum, { words }) => sum + words, 0);
  const used = spellings.filter(({ total }) => total > 0).length;
  const met = highFrequencyWords.filter(({ total }) => total > 0).length;
  return [
    storiesVerdict(answer),
    `${counted(running, 'running word')}, ${differentWords} different`,
    `${used} of ${counted(spellings.length, 'spelling')} used`,
    `${met} of ${counted(highFrequencyWords.length, 'high-frequency word')} met`,
  ].join(' · ');
}

/** The table of the stories. */
export function storyGrid({ stories }: SeriesAnswer): GridModel {
  const whole = { kind: 'story' } as const;
  const figures: readonly (readonly [ColumnModel, (story: SeriesStory) => CellModel])[] = [
    [
      { text: 'Story', width: 230 },
      ({ title, uri, passes }) => ({
        text: passes ? title : `✕ ${title}`,
        ...(!passes && { name: `${title}, falls short`, className: 'short' }),
        hint: title,
        opens: { uri, place: whole },
      }),
    ],
    [{ text: 'Lesson', width: 66 }, ({ lesson }) => ({ text: lesson })],
    [
      { text: 'Readable', width: 80 },
      ({ readable, target, words }) => ({
        text: shownShare(readable, words),
        ...(readable < target - 1e-9 && { className: 'short' }),
      }),
    ],
    [{ text: 'Target', width: 64 }, ({ target }) => ({ text: `${Math.round(target * 10_000) / 100} %` })],
    [{ text: 'Words', width: 62 }, ({ words }) => ({ text: String(words) })],
    [
      { text: 'A sentence', hint: 'Words a sentence', name: 'Words a sentence', width: 90 },
      ({ meanSentence }) => ({ text: meanSentence.toFixed(1) }),
    ],
    [
      { text: 'Longest', hint: 'Words in the longest sentence', name: 'Longest sentence', width: 72 },
      ({ longestSentence }) => ({ text: String(longestSentence) }),
    ],
    [
      { text: 'New', hint: 'Words that no earlier story has', name: 'New words', width: 48 },
      ({ newWords, uri }) => ({
        text: String(newWords.length),
        hint: newWords.slice(0, 40).join(', '),
        ...(newWords[0] !== undefined && {
          opens: { uri, place: { kind: 'word', word: newWords[0] } },
        }),
      }),
    ],
    [
      { text: 'So far', hint: 'Different words up to here', name: 'Different words so far', width: 62 },
      ({ wordsSoFar }) => ({ text: String(wordsSoFar) }),
    ],
    [
      {
        text: 'F-K',
        hint: 'Grade by Flesch-Kincaid; says little at this level',
        name: 'Flesch-Kincaid grade',
        width: 46,
      },
      ({ fleschKincaid }) => ({ text: grade(fleschKincaid) }),
    ],
    [
      { text: 'Spache', hint: 'Grade by Spache; says little at this level', name: 'Spache grade', width: 66 },
      ({ spache }) => ({ text: grade(spache) }),
    ],
    [
      { text: 'Targets', width: 380 },
      ({ passes, why, uri }) =>
        passes
          ? { text: 'passes', className: 'start' }
          : {
              text: `✕ ${why}`,
              name: `falls short: ${why}`,
              hint: why,
              className: 'start short',
              opens: { uri, place: whole },
            },
    ],
  ];
  return {
    columns: figures.map(([column]) => column),
    rows: stories.length,
    cell: (row, column) => {
      const story = stories[row];
      return story === undefined ? nothing : (figures[column]?.[1](story) ?? nothing);
    },
  };
}

/** Spellings or high-frequency words by stories. */
export function usesGrid(
  { stories, uri: sequence }: SeriesAnswer,
  rows: readonly SeriesRow[],
  kind: 'spelling' | 'word',
): GridModel {
  const heads: readonly ColumnModel[] = [
    { text: kind === 'spelling' ? 'Spelling' : 'Word', width: kind === 'spelling' ? 150 : 110 },
    { text: 'Lesson', width: 66 },
    { text: 'All', hint: 'Uses in all stories', name: 'Uses in all stories', width: 46 },
  ];
  const placeOf = (label: string): SeriesPlace =>
    kind === 'spelling' ? { kind, spelling: label } : { kind, word: label };
  return {
    columns: [
      ...heads,
      ...stories.map(({ lesson, title, uri }) => ({
        text: lesson,
        name: `${title}, lesson ${lesson}`,
        hint: title,
        width: 34,
        opens: { uri, place: { kind: 'story' } as const },
      })),
    ],
    rows: rows.length,
    cell: (row, column) => {
      const thing = rows[row];
      if (thing === undefined) return nothing;
      if (column === 0) {
        const place = { kind: 'lesson', lesson: thing.lesson } as const;
        return {
          text: thing.label,
          hint: `${thing.label}, lesson ${thing.lesson}`,
          opens: { uri: sequence, place },
        };
      }
      if (column === 1) return { text: thing.lesson };
      if (column === 2) return { text: String(thing.total), ...(thing.total === 0 && { className: 'none' }) };
      const story = stories[column - heads.length];
      return story === undefined
        ? nothing
        : usesCell(thing, story, column - heads.length, placeOf(thing.label));
    },
  };
}

/** In its own lesson's stories a use is framed, and none is set off; before it is taught, nothing is expected. */
function usesCell(
  { label, lessonIndex, uses }: SeriesRow,
  story: SeriesStory,
  index: number,
  place: SeriesPlace,
): CellModel {
  const count = uses[index] ?? 0;
  const isEarly = story.lessonIndex < lessonIndex;
  const isOwn = story.lessonIndex === lessonIndex;
  const amount = count === 0 ? (isOwn ? 'none' : 'rest') : count < 3 ? 'few' : count < 8 ? 'some' : 'many';
  const said = isEarly && count === 0 ? 'not taught yet' : counted(count, 'use');
  return {
    text: count > 0 || isOwn ? String(count) : isEarly ? '' : '·',
    ...((isEarly || count === 0) && { name: said }),
    hint: `${label} in ${story.title} (lesson ${story.lesson}): ${said}`,
    className: `${isEarly ? 'early' : amount}${isOwn ? ' own' : ''}`,
    opens: { uri: story.uri, place: count > 0 ? place : { kind: 'story' } },
  };
}

/** The pictures of the year. */
export function seriesCharts({ stories }: SeriesAnswer): readonly ChartModel[] {
  const name = ({ lesson, title }: SeriesStory): string => `Lesson ${lesson}, ${title}`;
  const lowest = Math.min(1, ...stories.map(({ readable, target }) => Math.min(readable, target)));
  const chart = (
    title: string,
    description: string,
    least: number,
    most: number,
    unit: string,
    bar: (story: SeriesStory) => { readonly value: number; readonly mark?: number; readonly said: string },
  ): ChartModel => ({
    title,
    description,
    least,
    most,
    unit,
    bars: stories.map((story) => {
      const { value, mark, said } = bar(story);
      const hint = `${name(story)}: ${said}`;
      return { value, ...(mark !== undefined && { mark }), fallsShort: !story.passes, hint, uri: story.uri };
    }),
  });
  const most = (figure: (story: SeriesStory) => number): number => Math.max(1, ...stories.map(figure));
  return [
    chart(
      'Readable share',
      'Percent of running words; the line across is the target.',
      Math.max(0, Math.floor((lowest * 100 - 5) / 10) * 10),
      100,
      ' %',
      ({ readable, target, words }) => ({
        value: readable * 100,
        mark: target * 100,
        said: `${shownShare(readable, words)} readable, target ${Math.round(target * 100)} %`,
      }),
    ),
    chart(
      'Length',
      'Running words.',
      0,
      most(({ words }) => words),
      '',
      ({ words }) => ({
        value: words,
        said: counted(words, 'word'),
      }),
    ),
    chart(
      'Sentences',
      'Mean words; the line across is the longest.',
      0,
      most(({ longestSentence }) => longestSentence),
      '',
      ({ meanSentence, longestSentence }) => ({
        value: meanSentence,
        mark: longestSentence,
        said: `${meanSentence.toFixed(1)} words a sentence, the longest ${longestSentence}`,
      }),
    ),
    chart(
      'New words',
      'Words that no earlier story has.',
      0,
      most(({ newWords }) => newWords.length),
      '',
      ({ newWords }) => ({ value: newWords.length, said: counted(newWords.length, 'new word') }),
    ),
  ];
}

const nothing: CellModel = { text: '' };

function grade(figure: number | undefined): string {
  return figure === undefined ? '-' : (Math.round(figure * 10) / 10).toFixed(1);
}
