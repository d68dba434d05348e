import { buildChain } from '../chains/build-chain.ts';
import type { Chain, ChainLink, ChainStep } from '../chains/chain.ts';
import { counted, lessonLabel } from '../review/wording.ts';
import type { Taught } from '../sequence/taught.ts';
import { createWordFinder } from '../words/find-words.ts';
import { isTrouble } from '../words/read-wish.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import type { Host } from './host.ts';
import { jsonLines, jsonPart } from './json.ts';
import { lessonOfCall } from './lesson-call.ts';
import { createSequenceFinder } from './sequence-finder.ts';
import { styled } from './styled.ts';
import { readNumber } from './word-wishes.ts';

interface AskedChain {
  readonly chain: Chain;
  readonly length: number;
  readonly taught: Taught;
}

/** What `chain` writes; the first is for people. */
const formats: Readonly<Record<string, (asked: AskedChain, host: Host) => string>> = {
  text: chainPage,
  json: chainReport,
};

/** `chain --lesson NAME`: a word-building chain. */
export const chainCommand: Command = {
  name: 'chain',
  summary: 'makes a word-building chain: each step changes, adds or drops one grapheme',
  operands: '',
  help: `Makes a word-building chain for a lesson: real words that children can sound out,
each made of the one before by changing, adding or dropping one grapheme (an, pan,
man, mat). A split grapheme such as a_e is one. No word comes twice, none is rare
or unfit for six-year-olds; words that practise what is new are preferred, and the
place of the change varies. The same seed gives the same chain, on any machine.

The sequence is the nearest sequence.yaml, looked for from this folder upwards.

With --format json:
  {"version":1,"lesson":NAME,"length":8,"complete":true,"longest":false,
   "chain":[{"word":"mat","new":false,"parts":[…],"step":{"kind":"change",
    "place":"end","at":2,"from":"n","to":"t"}},…]}
  length: as asked. complete: the chain has it. longest: surely no chain of these
  words is longer. step: null for the first word; kind: change, add or drop; at:
  the index of the grapheme in the longer word; from, to: its letters, or null.

Exit code 1 when the chain is shorter than asked.`,
  options: [
    { name: 'lesson', value: 'NAME', isNeeded: true, description: 'the lesson the children have reached' },
    { name: 'sequence', value: 'FILE', description: 'uses this sequence' },
    { name: 'length', value: 'N', description: 'how many words, 2 to 100 (10)' },
    { name: 'start', value: 'WORD', description: 'the first word' },
    { name: 'seed', value: 'N', description: 'a whole number; another one gives another chain (1)' },
    { name: 'forms', description: 'forms with endings too (cats, jumped)' },
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), or json for programs',
      choices: Object.keys(formats),
    },
  ],
  run: chain,
};

function chain({ options }: Call, host: Host): ExitCode {
  const refuse = (message: string): ExitCode => {
    host.writeError(`${message}\n`);
    return exitCodes.unusable;
  };
  const length = readNumber(options.get('length') ?? '10', 'length', { least: 2, most: 100 });
  if (isTrouble(length)) return refuse(length.trouble);
  const seed = readNumber(options.get('seed') ?? '1', 'seed', { least: 0, most: 2 ** 31 - 1 });
  if (isTrouble(seed)) return refuse(seed.trouble);
  const sequences = createSequenceFinder(host);
  const wanted = { lesson: options.get('lesson') ?? '', sequence: options.get('sequence') };
  const lesson = lessonOfCall(wanted, sequences, host);
  if ('message' in lesson) return refuse(lesson.message);
  const { taught, file } = lesson;
  const finder = createWordFinder(file.teaching, host.phonics());
  const start = options.get('start')?.toLowerCase();
  const made = buildChain(finder, taught, host.phonics(), {
    length,
    seed,
    includesForms: options.has('forms'),
    ...(start === undefined ? {} : { start }),
  });
  if (start !== undefined && made.links.length === 0) {
    return refuse(
      `“${start}” cannot begin a chain at ${lessonLabel(taught.lesson)}: it is not a listed word that children can sound out there.`,
    );
  }
  const format = formats[options.get('format') ?? 'text'] ?? chainPage;
  host.writeOutput(format({ chain: made, length, taught }, host));
  if (sequences.errors() > 0) return exitCodes.unusable;
  return made.isComplete ? exitCodes.well : exitCodes.fallsShort;
}

function chainReport({ chain: { links, isComplete, isLongest }, length, taught }: AskedChain): string {
  return jsonLines(
    'chain',
    links.map(({ found, step }) => ({
      word: found.word,
      new: found.isNew,
      parts: (found.reading?.parts ?? []).map(jsonPart),
      step: step === undefined ? null : stepReport(step),
    })),
    { lesson: taught.lesson.name, length, complete: isComplete, longest: isLongest },
  );
}

function stepReport({ kind, place, at, from, to }: ChainStep): object {
  return { kind, place, at, from: from ?? null, to: to ?? null };
}

function chainPage(
  { chain: { links, isComplete, isLongest }, length, taught }: AskedChain,
  { hasColour }: Host,
): string {
  const style = styled(hasColour);
  const width = Math.max(0, ...links.map(({ found }) => found.word.length)) + 3;
  const lines = links.map(({ found, step }, index) => {
    const isNew = found.newSpellings.length > 0;
    const room = ' '.repeat(width - found.word.length - (isNew ? 1 : 0));
    const word = isNew ? style.good(`${found.word}*`) : found.word;
    return `${String(index + 1).padStart(4)}  ${word}${room}${step === undefined ? '' : style.faint(stepText(step))}`.trimEnd();
  });
  const news = taught.newSpellings.map(({ line }) => `${line.letters} as in ${line.keyWord}`);
  const notes = [
    ...(isComplete ? [] : [shortfall(links, length, isLongest)]),
    ...(links.some(({ found }) => found.newSpellings.length > 0)
      ? [`* practises ${news.length === 1 ? news[0] : `a new spelling: ${news.join(', ')}`}`]
      : []),
  ];
  return [...lines, ...(lines.length > 0 && notes.length > 0 ? [''] : []), ...notes, ''].join('\n');
}

function shortfall(links: readonly ChainLink[], length: number, isLongest: boolean): string {
  const asked = `chain of ${counted(length, 'word')}`;
  if (links.length < 2) return `There is no chain at this lesson: no two words differ by one grapheme.`;
  return isLongest
    ? `There is no ${asked} here; this is the longest, ${counted(links.length, 'word')}.`
    : `No ${asked} was found; this is the longest that was, ${counted(links.length, 'word')}.`;
}

function stepText({ kind, from, to }: ChainStep): string {
  if (kind === 'add') return `add ${to ?? ''}`;
  return kind === 'drop' ? `drop ${from ?? ''}` : `change ${from ?? ''} to ${to ?? ''}`;
}
