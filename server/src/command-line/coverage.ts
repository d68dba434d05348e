import { resolve } from 'node:path';
import { reviewStory } from '../review/review-story.ts';
import { coverSeries } from '../series/cover-series.ts';
import { seriesReport } from '../series/report/series-report.ts';
import { type TableName, tableNames } from '../series/report/tables.ts';
import { coverageText } from '../series/report/text.ts';
import type { Series } from '../series/series.ts';
import { storyCoverage } from '../series/story-coverage.ts';
import { compareStories } from './against.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import { complain } from './complaint.ts';
import { readCount } from './count-option.ts';
import type { Host } from './host.ts';
import { storiesOfSeries } from './stories-of-series.ts';

/** What `coverage` writes; the first is for people. */
const formats: Readonly<Record<string, (series: Series, table: TableName) => string>> = {
  text: coverageText,
  json: (series) => seriesReport(series, 'json'),
  csv: (series, table) => seriesReport(series, 'csv', table),
  html: (series) => seriesReport(series, 'html'),
};

/** `coverage FOLDER`: a whole series at once. */
export const coverageCommand: Command = {
  name: 'coverage',
  summary: 'shows a whole series: what is practised when, how it grows, what is missing',
  operands: 'FOLDER',
  help: `Reads every story of a folder, in the order of the lessons, and shows the year:
uses of each spelling and high-frequency word by story, new words, readable share,
words, sentence length, two readability formulas; and what is missing:

  stories that fall short of a target
  lessons without a story, up to the last lesson that has one
  spellings not practised in their lesson, or not again within the next stories
  high-frequency words not seen for several stories in a row
  words met too seldom in the whole series

The limits stand in the sequence; these hold when it sets none:
  series: { again within: 3, unseen for: 5, met at least: 2 }

--format csv writes one table, for a spreadsheet: --table stories, spellings,
high-frequency-words, words (every word with its first story, count, kind and
parts) or gaps. --format html writes one page to read and to print; it loads
nothing from elsewhere.

--against OTHER reads the stories by another sequence too and shows which gain
and which lose. With --format json:
  {"version":1,"stories":[{"path":…,"title":…,"turn":"gains|loses|rises|falls|stays",
    "before":{"lesson":NAME,"passes":true,"readable":0.0,"target":0.95,
     "failing":[{"rule":…,"count":1}]},"after":…}]}
  before or after is null where that sequence lacks the story's lesson.

Exit code 1 when there are more gaps than --max-gaps, or a story loses by --against.`,
  options: [
    { name: 'sequence', value: 'FILE', description: 'reads every story by this sequence' },
    { name: 'against', value: 'FILE', description: 'compares with another sequence' },
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), json, csv or html',
      choices: Object.keys(formats),
    },
    { name: 'table', value: 'TABLE', description: 'the table of --format csv', choices: tableNames },
    { name: 'out', value: 'FILE', description: 'writes to this file' },
    { name: 'overwrite', description: 'replaces the file when it is there' },
    { name: 'max-gaps', value: 'COUNT', description: 'as many gaps are no fault (any number)' },
  ],
  run: coverage,
};

function coverage({ operands, options }: Call, host: Host): ExitCode {
  const [folder = '.'] = operands;
  const refuse = (path: string, message: string): ExitCode => {
    complain({ path, message }, host);
    return exitCodes.unusable;
  };
  const format = options.get('format') ?? 'text';
  const mostGaps = readCount(options, 'max-gaps');
  if (typeof mostGaps === 'object') return refuse('--max-gaps', mostGaps.message);
  if (options.has('table') && format !== 'csv') return refuse('--table', 'A table goes with --format csv.');
  const against = options.get('against');
  const { stories, sequence, complaints, sequences } = storiesOfSeries(folder, options.get('sequence'), host);
  for (const complaint of complaints) complain(complaint, host);
  if (sequence === undefined) return exitCodes.unusable;

  let output: string;
  let fallsShort = false;
  if (against === undefined) {
    const { words } = host.phonics();
    const covered = stories.map(({ found, review }) => storyCoverage(found.path, review, words));
    const series = coverSeries(covered, sequence.teaching);
    const table = tableNames.find((name) => name === options.get('table')) ?? 'stories';
    output = (formats[format] ?? coverageText)(series, table);
    fallsShort = mostGaps !== undefined && series.gaps.length > mostGaps;
  } else {
    if (format !== 'text' && format !== 'json')
      return refuse('--against', 'goes with --format text or json.');
    const other = sequences.at(resolve(host.workingFolder, against));
    if ('trouble' in other) return refuse(against, `The sequence ${other.trouble}.`);
    const compared = compareStories(stories, (story) => {
      const taught = other.teaching.taughtAt(story.frontMatter.lesson?.value ?? '');
      return taught && reviewStory({ story, taught, phonics: host.phonics() });
    });
    output = format === 'json' ? compared.json() : compared.text(other.path, host.hasColour);
    fallsShort = compared.losing > 0;
  }
  const written = write(output, options, host);
  if (written !== undefined) return refuse(options.get('out') ?? '', written);
  if (complaints.length > 0 || sequences.errors() > 0) return exitCodes.unusable;
  return fallsShort ? exitCodes.fallsShort : exitCodes.well;
}

/** Writes the report; gives why it cannot be written, if so. */
function write(output: string, options: Call['options'], host: Host): string | undefined {
  const out = options.get('out');
  if (out === undefined) {
    host.writeOutput(output);
    return undefined;
  }
  const absolute = resolve(host.workingFolder, out);
  const overwrites = options.has('overwrite');
  const kind = host.kindOf(absolute);
  if (kind === 'folder') return 'This is a folder; name a file.';
  if (kind === 'file' && !overwrites) return 'The file is there already; --overwrite replaces it.';
  const failed = host.writeFile(absolute, new TextEncoder().encode(output), { overwrites });
  return failed === undefined ? undefined : `The file cannot be written: ${failed.reason}.`;
}
