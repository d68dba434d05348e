import { type Layout, layouts, type Paper, papers } from '../materials/layout/paper.ts';
import {
  type Material,
  materials,
  type PictureFile,
  type PracticePart,
  practiceParts,
} from '../materials/order.ts';
import { counted } from '../review/wording.ts';
import { storyTitle } from '../story/story-title.ts';
import { lineIndex } from '../text/line-index.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import { type Complaint, complain } from './complaint.ts';
import type { Host } from './host.ts';
import { type PlannedFile, planFiles } from './planned-files.ts';
import { type StoryToPrint, storiesToPrint } from './stories-to-print.ts';
import { storyPictures } from './story-pictures.ts';

/** `print PATH…`: books and what lies beside them, as PDF. */
export const printCommand: Command = {
  name: 'print',
  summary: 'prints stories as PDF: the child’s book, the teacher’s copy, practice pages, cards',
  operands: 'PATH…',
  help: `Prints the stories in the files and folders as PDF. One of --book (the default),
--teacher, --practice and --cards says what is printed. The sequence of each story
is found as by check.

With --out FILE.pdf all stories go into one file: several books become a collection
with a cover and contents. With --out FOLDER, or without --out into this folder, each
story becomes a file that is named after it.

A booklet has two pages a side. Print it on both sides, turned over the short edge,
at its actual size; fold the sheets together.

Nothing is written when a picture or letter is missing, or when a file is there
already: --frames sets an empty frame for a picture to come, --overwrite replaces
the file.`,
  options: [
    { name: 'book', description: 'the child’s book' },
    { name: 'teacher', description: 'the teacher’s copy' },
    { name: 'practice', description: 'practice pages with their key' },
    { name: 'cards', description: 'word cards and letter cards to cut out' },
    {
      name: 'layout',
      value: 'LAYOUT',
      description: 'how a book comes onto paper: a page a sheet, or a booklet to fold',
      choices: layouts,
    },
    { name: 'paper', value: 'PAPER', description: 'the size of the paper', choices: papers },
    { name: 'out', value: 'PATH', description: 'the file or folder to write' },
    { name: 'overwrite', description: 'replaces files that are there' },
    { name: 'frames', description: 'prints an empty frame for a picture whose file is not there yet' },
    { name: 'title', value: 'TITLE', description: 'the title of a collection; else that of the sequence' },
    { name: 'parts', value: 'LIST', description: `the practice pages: ${practiceParts.join(',')} (all)` },
    { name: 'lesson', value: 'NAME', description: 'takes every story as one for this lesson' },
    { name: 'sequence', value: 'FILE', description: 'uses this sequence for every story' },
  ],
  run: print,
};

function print(call: Call, host: Host): ExitCode {
  const wishes = readWishes(call);
  if ('message' in wishes) return refuse([wishes.message], host);
  const { stories, complaints } = storiesToPrint(call, { needsChain: wishes.material !== 'book' }, host);
  if (complaints.length > 0) {
    for (const complaint of complaints) complain(complaint, host);
    return refuse([nothingWritten], host);
  }
  const overwrites = call.options.has('overwrite');
  const { material, layout } = wishes;
  const planned = planFiles(stories, { material, layout, out: call.options.get('out'), overwrites }, host);
  if ('messages' in planned) return refuse([...planned.messages, nothingWritten], host);
  // With several files, all are tried before the first is written, and made again then: one at a time is in memory.
  const tried: PrintedFile[] = [];
  for (const file of planned.files) {
    const printed = printFile(file, wishes, stories, host);
    tried.push(planned.files.length === 1 ? printed : { ...printed, bytes: new Uint8Array() });
  }
  if (tried.some(({ problems }) => problems.length > 0)) return refuseProblems(tried, host);
  for (const file of planned.files) {
    const printed = planned.files.length === 1 ? tried[0] : undefined;
    const { bytes, sides, problems } = printed ?? printFile(file, wishes, stories, host);
    host.showProgress('');
    if (problems.length > 0) return refuseProblems([{ bytes, sides, problems }], host);
    const failed = host.writeFile(file.absolute, bytes, { overwrites });
    if (failed !== undefined) return refuse([`${file.path} cannot be written: ${failed.reason}.`], host);
    host.writeOutput(`${file.path}  ${counted(sides, 'page')}\n`);
  }
  return exitCodes.well;
}

function refuseProblems(printed: readonly PrintedFile[], host: Host): ExitCode {
  host.showProgress('');
  const problems = printed.flatMap((file) => file.problems);
  for (const problem of problems) complain(problem, host);
  const hint = problems.some(({ message }) => /^The picture .* is not there\.$/.test(message))
    ? ['With --frames an empty frame stands for a picture that is not there yet.']
    : [];
  return refuse([...hint, nothingWritten], host);
}

const nothingWritten = 'Nothing was written.';

interface Wishes {
  readonly material: Material;
  readonly layout: Layout;
  readonly paper: Paper;
  readonly parts: ReadonlySet<PracticePart>;
  readonly title: string | undefined;
  readonly framesMissing: boolean;
}

function readWishes({ options }: Call): Wishes | { readonly message: string } {
  const wanted = materials.filter((material) => options.has(material));
  const [material = 'book', other] = wanted;
  if (other !== undefined)
    return { message: `--${material} and --${other} cannot be had in one file; call twice.` };
  const parts = (options.get('parts') ?? practiceParts.join(',')).split(',').map((part) => part.trim());
  const unknown = parts.find((part) => !isPart(part));
  if (unknown !== undefined) {
    return { message: `“${unknown}” is not a practice page; there is ${practiceParts.join(', ')}.` };
  }
  if (options.has('parts') && material !== 'practice') return { message: '--parts goes with --practice.' };
  const layout = layouts.find((each) => each === options.get('layout')) ?? 'page';
  if (layout === 'booklet' && material !== 'book') return { message: 'Only a book can be a booklet.' };
  return {
    material,
    layout,
    paper: papers.find((each) => each === options.get('paper')) ?? 'letter',
    parts: new Set(practiceParts.filter((part) => parts.includes(part))),
    title: options.get('title'),
    framesMissing: options.has('frames'),
  };
}

function isPart(part: string): part is PracticePart {
  return practiceParts.some((each) => each === part);
}

interface PrintedFile {
  readonly bytes: Uint8Array;
  readonly sides: number;
  readonly problems: readonly Complaint[];
}

function printFile(
  file: PlannedFile,
  { title, framesMissing, ...wishes }: Wishes,
  all: readonly StoryToPrint[],
  host: Host,
): PrintedFile {
  const { print: printOrder, fonts } = host.printing();
  const { stories } = file;
  const sequences = new Set(stories.map(({ review }) => review.taught.sequence.title));
  const [sequence = ''] = sequences.size === 1 ? sequences : [];
  const known = new Map<string, PictureFile>();
  const { bytes, sides, problems } = printOrder({
    ...wishes,
    stories: stories.map(({ review, chain, found }) => ({
      review,
      chain,
      pictures: storyPictures(review.story, found, { known, framesMissing }, host),
    })),
    fonts,
    title: title ?? (sequence === '' ? 'Stories' : sequence),
    onStory: (index) => {
      const story = stories[index];
      if (story === undefined || all.length < 2) return;
      const name = storyTitle(story.review.story) ?? story.path;
      host.showProgress(`Printing ${all.indexOf(story) + 1} of ${all.length}: ${name}`);
    },
  });
  return {
    bytes,
    sides,
    problems: problems.flatMap(({ story, span, message }): readonly Complaint[] => {
      const found = stories[story];
      if (found === undefined) return [];
      const place = span && lineIndex(found.review.story.text)(span.start);
      return [{ path: found.path, ...(place === undefined ? {} : { at: place }), message }];
    }),
  };
}

function refuse(messages: readonly string[], host: Host): ExitCode {
  for (const message of messages) host.writeError(`${message}\n`);
  return exitCodes.unusable;
}
