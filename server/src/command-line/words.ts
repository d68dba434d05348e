import { lessonLabel, listed } from '../review/wording.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { createWordFinder } from '../words/find-words.ts';
import type { FoundWord, FoundWords } from '../words/found-word.ts';
import type { WantedSpelling } from '../words/word-query.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import type { Host } from './host.ts';
import { jsonLines, jsonPart } from './json.ts';
import { lessonOfCall } from './lesson-call.ts';
import { createSequenceFinder } from './sequence-finder.ts';
import { type Styles, styled } from './styled.ts';
import { readWordWishes, wordWishOptions } from './word-wishes.ts';

/** What `words` writes; the first is for people. */
const formats: Readonly<Record<string, (found: FoundWords, taught: Taught, host: Host) => string>> = {
  text: wordsPage,
  json: wordsReport,
};

/** `words --lesson NAME`: the words children can read at a lesson. */
export const wordsCommand: Command = {
  name: 'words',
  summary: 'lists the words children can read at a lesson, the most useful first',
  operands: '',
  help: `Lists the words of the lexicon that children can read at a lesson: those they can
sound out and those taught as wholes. Words that six-year-olds know come first,
common before rare, short before long, base words before their forms. Names,
abbreviations and words unfit for a six-year-old's text are never listed.

The sequence is the nearest sequence.yaml, looked for from this folder upwards.

With --format json:
  {"version":1,"lesson":NAME,"more":false,"words":[{"word":"ship",
   "kind":"decodable","new":true,"familiar":true,"base":null,
   "parts":[{"letters":"sh","sounds":["SH"],"spans":[[0,2]]},…],
   "syllables":["ship"],"newSpellings":["sh as in ship"]},…]}
  more: there are words beyond the limit. kind: decodable or high-frequency.
  familiar: six-year-olds know it. base: the word it is a form of, or null.

Exit code 1 when there is no such word.`,
  options: [
    { name: 'lesson', value: 'NAME', isNeeded: true, description: 'the lesson the children have reached' },
    { name: 'sequence', value: 'FILE', description: 'uses this sequence' },
    ...wordWishOptions,
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), or json for programs',
      choices: Object.keys(formats),
    },
  ],
  run: words,
};

function words({ options }: Call, host: Host): ExitCode {
  const sequences = createSequenceFinder(host);
  const lesson = lessonOfCall(
    { lesson: options.get('lesson') ?? '', sequence: options.get('sequence') },
    sequences,
    host,
  );
  const wishes = 'message' in lesson ? lesson : readWordWishes(options, host);
  if ('message' in lesson || 'message' in wishes) {
    host.writeError(`${'message' in wishes ? wishes.message : ''}\n`);
    return exitCodes.unusable;
  }
  const { file, taught } = lesson;
  const found = createWordFinder(file.teaching, host.phonics()).find(taught, wishes.query);
  const format = formats[options.get('format') ?? 'text'] ?? wordsPage;
  host.writeOutput(format(found, taught, host));
  const { spelling } = wishes.query;
  if (found.words.length === 0 && spelling !== undefined) {
    const reason = untaughtSpelling(spelling, taught, file.teaching);
    if (reason !== undefined) host.writeError(`${reason}\n`);
  }
  if (sequences.errors() > 0) return exitCodes.unusable;
  return found.words.length > 0 ? exitCodes.well : exitCodes.fallsShort;
}

/** Says that the lesson has not reached a spelling; nothing when it has. */
function untaughtSpelling(
  { letters, pattern }: WantedSpelling,
  { lesson }: Taught,
  { spellings }: Teaching,
): string | undefined {
  const sounds = (of: NonNullable<WantedSpelling['pattern']>): string =>
    of.map(({ soundClass }) => soundClass).join(' ');
  const own = spellings.filter(
    (each) =>
      each.line.letters === letters && (pattern === undefined || sounds(each.pattern) === sounds(pattern)),
  );
  const first = own[0];
  if (first === undefined)
    return `No lesson teaches ${letters} by itself${pattern === undefined ? '' : ' as it sounds there'}.`;
  if (first.lesson.index <= lesson.index) return undefined;
  return `${letters} as in ${first.line.keyWord} is not taught yet; ${lessonLabel(first.lesson)} teaches it.`;
}

function wordsReport({ words: found, hasMore }: FoundWords, { lesson }: Taught): string {
  return jsonLines(
    'words',
    found.map(({ word, kind, isNew, reading, newSpellings, listed: entry }) => ({
      word,
      kind,
      new: isNew,
      familiar: entry.isFamiliar,
      base: entry.inflection?.base ?? null,
      parts: (reading?.parts ?? []).map(jsonPart),
      syllables: (reading?.syllables ?? []).map(({ text }) => text),
      newSpellings: newSpellings.map(({ line }) => `${line.letters} as in ${line.keyWord}`),
    })),
    { lesson: lesson.name, more: hasMore },
  );
}

function wordsPage({ words: found, hasMore }: FoundWords, taught: Taught, { hasColour }: Host): string {
  const style = styled(hasColour);
  const { lesson } = taught;
  const head = lesson.title === undefined ? lessonLabel(lesson) : `${lessonLabel(lesson)}: ${lesson.title}`;
  if (found.length === 0)
    return `${style.strong(capitalised(head))}\n\nNo word of the lexicon is like that here.\n`;
  const hasNew = found.some(({ isNew }) => isNew);
  return [
    style.strong(capitalised(head)),
    '',
    ...columnsOf(found, style),
    '',
    [
      hasMore
        ? `The first ${found.length} words; --limit shows more.`
        : `${found.length} ${found.length === 1 ? 'word' : 'words'}, and no more.`,
      ...(hasNew ? [`* practises what is new: ${whatIsNew(taught)}.`] : []),
    ].join('\n'),
    '',
  ].join('\n');
}

/** Words in columns, read along the lines, so that the most useful ones stand at the top. */
function columnsOf(found: readonly FoundWord[], style: Styles): readonly string[] {
  const width = Math.max(...found.map(({ word }) => word.length)) + 3;
  const across = Math.max(1, Math.floor(80 / width));
  const lines: string[] = [];
  for (let at = 0; at < found.length; at += across) {
    const cells = found.slice(at, at + across).map(({ word, isNew }) => {
      const room = ' '.repeat(width - word.length - (isNew ? 1 : 0));
      return `${isNew ? style.good(`${word}*`) : word}${room}`;
    });
    lines.push(`  ${cells.join('').trimEnd()}`);
  }
  return lines;
}

function whatIsNew({ newSpellings, newHighFrequencyWords }: Taught): string {
  const spellings = newSpellings.map(({ line }) => `${line.letters} as in ${line.keyWord}`);
  return listed([...spellings, ...newHighFrequencyWords]);
}

function capitalised(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
