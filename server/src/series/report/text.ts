import { shownShare } from '../../review/figures.ts';
import { counted } from '../../review/wording.ts';
import { gapHeadings, gapMessage } from '../gap-wording.ts';
import { type Gap, gapKinds, type Series, type StoryCoverage } from '../series.ts';

/** Gaps of one kind that are listed in the text; the rest are counted. The other formats have all. */
const mostListed = 20;

/** What `coverage` shows on a terminal: a line a story, then the gaps by kind. */
export function coverageText(series: Series): string {
  const { stories, spellings, highFrequencyWords, words, sequence } = series;
  const rows = stories.map(({ story, newWords }) => [
    story.lesson.name,
    titleAmong(story, stories),
    shownShare(story.readable, story.counts.words),
    String(story.counts.words),
    story.sentences.mean.toFixed(1),
    String(story.sentences.longest),
    String(newWords.length),
    grade(story.readability.fleschKincaid),
    grade(story.readability.spache),
    story.passes ? 'passes' : 'falls short',
  ]);
  const used = spellings.filter(({ total }) => total > 0).length;
  const met = highFrequencyWords.filter(({ total }) => total > 0).length;
  return [
    `${sequence.title === '' ? 'Series' : sequence.title}: ${counted(stories.length, 'story', 'stories')}, ${counted(words.length, 'different word')}`,
    `${used} of ${counted(spellings.length, 'spelling')} used, ${met} of ${counted(highFrequencyWords.length, 'high-frequency word')} met`,
    '',
    ...aligned([headings, ...rows]),
    '',
    'F-K and Spache are grades by two formulas that say little of texts as simple as these;',
    'compare stories with each other, nothing else.',
    ...gapLines(series.gaps),
    '',
  ].join('\n');
}

/** A story's title, with its file where another story has the same. */
function titleAmong({ title, path }: StoryCoverage, stories: Series['stories']): string {
  const isShared = stories.filter(({ story }) => story.title === title).length > 1;
  return isShared ? `${title} (${path.split('/').at(-1)})` : title;
}

const headings = [
  'Lesson',
  'Story',
  'Readable',
  'Words',
  'A sentence',
  'Longest',
  'New',
  'F-K',
  'Spache',
  '',
] as const;

/** A grade with one decimal; a hyphen where there is none. */
export function grade(figure: number | undefined): string {
  return figure === undefined ? '-' : (Math.round(figure * 10) / 10).toFixed(1);
}

function gapLines(gaps: readonly Gap[]): readonly string[] {
  if (gaps.length === 0) return ['', 'No gaps.'];
  return gapKinds.flatMap((kind) => {
    const own = gaps.filter((gap) => gap.kind === kind);
    if (own.length === 0) return [];
    const more = own.length - mostListed;
    return [
      '',
      `${gapHeadings[kind]}: ${own.length}`,
      ...own.slice(0, mostListed).map((gap) => `  ${gapMessage(gap)}`),
      ...(more > 0 ? [`  and ${more} more; --format csv --table gaps lists all`] : []),
    ];
  });
}

/** Columns of even width; texts to the left, figures to the right. */
function aligned(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = headings.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, column) => {
        const width = widths[column] ?? 0;
        return column === 1 || column === row.length - 1 ? cell.padEnd(width) : cell.padStart(width);
      })
      .join('  ')
      .trimEnd(),
  );
}
