import type { Fit, HeldBack } from '../fit/fit.ts';
import { fitText } from '../fit/fit-text.ts';
import { frontMatterFindings } from '../review/findings.ts';
import { missingLabel } from '../review/wording.ts';
import { readStory } from '../story/read-story.ts';
import { lineIndex } from '../text/line-index.ts';
import { sequenceFor, unusable } from './check-story.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import { complain } from './complaint.ts';
import { fileTrouble } from './file-trouble.ts';
import { findTexts } from './find-texts.ts';
import { fitPage } from './fit-text.ts';
import type { Host } from './host.ts';
import { jsonLines } from './json.ts';
import { noSuchLessonMessage } from './lesson-call.ts';
import { createSequenceFinder } from './sequence-finder.ts';

/** A text that was fitted. */
export interface FittedText {
  readonly path: string;
  readonly fit: Fit;
  /** What holds the text back at the lesson that was asked for, else just before it first fits. */
  readonly heldBack: HeldBack | undefined;
}

/** What `fit` writes; the first is for people. */
const formats: Readonly<Record<string, (text: FittedText, host: Host) => string>> = {
  text: fitPage,
  json: fitReport,
};

/** `fit FILE`: where in the sequence a text belongs. */
export const fitCommand: Command = {
  name: 'fit',
  summary: 'shows how readable any text is at every lesson, and where it first fits',
  operands: 'FILE',
  help: `Reads a text, markdown or plain, at every lesson of the sequence: the share of its
words that children can read, as check --lesson counts it, and the first lesson
whose readable target it reaches. Then what holds it back just before that lesson,
or at the lesson of --lesson: for each spelling or form how much the share would
rise if it alone were taught, and the words that need it.

The sequence is the nearest sequence.yaml, looked for from the text's folder
upwards, or the file that a story names.

With --format json:
  {"version":1,"path":…,"words":0,"differentWords":0,"first":NAME,"lasting":NAME,
   "heldBack":{"lesson":NAME,"things":[{"label":"igh as in light","lesson":NAME,
    "rise":0.0,"words":["night"]}],"words":[{"text":"night","count":1,"rise":0.0,
    "kind":"not-taught","lesson":NAME}]},
   "lessons":[{"lesson":NAME,"readable":0.0,"target":0.95,"reaches":false,
    "counts":{"words":0,"decodable":0,"high-frequency":0,"name":0,
     "story-word":0,"not-taught":0}}]}
  first: the first lesson that reaches its target; lasting: the first from which on
  all do; null where there is none. lesson of a thing or word: the one that teaches
  it, or at which it becomes readable, or null.

Exit code 1 when no lesson reaches its target.`,
  options: [
    { name: 'lesson', value: 'NAME', description: 'shows what holds the text back at this lesson' },
    { name: 'sequence', value: 'FILE', description: 'uses this sequence' },
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), or json for programs',
      choices: Object.keys(formats),
    },
  ],
  run: fit,
};

function fit({ operands, options }: Call, host: Host): ExitCode {
  const refuse = (path: string, message: string): ExitCode => {
    complain({ path, message }, host);
    return exitCodes.unusable;
  };
  const { texts, complaints } = findTexts(operands, { plainText: true }, host);
  for (const complaint of complaints) complain(complaint, host);
  const [found, second] = texts;
  if (found === undefined) return exitCodes.unusable;
  if (second !== undefined) return refuse(operands.join(' '), 'This is a folder; name one file.');
  const read = host.readFile(found.absolute);
  if (read.kind !== 'text') return refuse(found.path, `The file ${fileTrouble(read)}.`);
  const story = readStory(read.text);
  const sequences = createSequenceFinder(host);
  const file = sequenceFor(
    found,
    story,
    { lesson: undefined, sequence: options.get('sequence') },
    sequences,
    host,
  );
  if ('message' in file) {
    for (const complaint of unusable(found, story, file).complaints) complain(complaint, host);
    return exitCodes.unusable;
  }
  const fitted = fitText(story, file.teaching, host.phonics());
  const place = lineIndex(story.text);
  for (const { page, start } of story.pages) {
    for (const { span, message, rule } of frontMatterFindings(page.problems)) {
      complain({ path: found.path, at: place(start + span.start), message, rule }, host);
    }
  }
  if (fitted.words === 0) return refuse(found.path, 'There is no word in this text.');
  const { lessons } = file.teaching.sequence;
  const asked = options.get('lesson');
  const lesson =
    asked === undefined
      ? lessons[(fitted.first?.lesson.index ?? lessons.length) - 1]
      : file.teaching.lessonNamed(asked);
  if (asked !== undefined && lesson === undefined)
    return refuse(found.path, noSuchLessonMessage(asked, file));
  const format = formats[options.get('format') ?? 'text'] ?? fitPage;
  const heldBack = lesson && fitted.heldBackAt(lesson);
  host.writeOutput(format({ path: found.path, fit: fitted, heldBack }, host));
  if (sequences.errors() > 0) return exitCodes.unusable;
  return fitted.first === undefined ? exitCodes.fallsShort : exitCodes.well;
}

function fitReport({
  path,
  fit: { words, differentWords, first, lasting, lessons },
  heldBack,
}: FittedText): string {
  return jsonLines(
    'lessons',
    lessons.map(({ lesson, readable, target, reachesTarget, counts }) => ({
      lesson: lesson.name,
      readable,
      target,
      reaches: reachesTarget,
      counts,
    })),
    {
      path,
      words,
      differentWords,
      first: first?.lesson.name ?? null,
      lasting: lasting?.lesson.name ?? null,
      heldBack: heldBack === undefined ? null : heldBackReport(heldBack),
    },
  );
}

function heldBackReport({ fit: { lesson }, things, words }: HeldBack): object {
  return {
    lesson: lesson.name,
    things: things.map(({ missing, rise, words: needing }) => ({
      label: missingLabel(missing),
      lesson: missing.lesson?.name ?? null,
      rise,
      words: needing.map(({ text }) => text),
    })),
    words: words.map(({ text, count, rise, reviewed, lesson: readableAt }) => ({
      text,
      count,
      rise,
      kind: reviewed.kind,
      lesson: readableAt?.name ?? null,
    })),
  };
}
