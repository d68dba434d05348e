import { notated } from '../phonics/notation.ts';
import type { Reading, ReadingSource } from '../phonics/reading.ts';
import { counted } from '../review/wording.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import type { Host } from './host.ts';
import { jsonLines, jsonPart } from './json.ts';

interface SoundedWord {
  readonly word: string;
  readonly readings: readonly Reading[];
}

const formats: Readonly<Record<string, (words: readonly SoundedWord[]) => string>> = {
  text: soundsPage,
  json: soundsReport,
};

/** `sounds WORD…`: how words are cut into graphemes and syllables. */
export const soundsCommand: Command = {
  name: 'sounds',
  summary: 'shows the graphemes, sounds and syllables of words',
  operands: 'WORD…',
  help: `Shows every reading of each word, the likeliest first: its graphemes with their
sounds, its syllables, and where the reading comes from. A split grapheme is
written with a low line: a_e. Words are parted by spaces, commas and hyphens.

With --format json, a word a line:
  {"version":1,"words":[{"word":"cake","readings":[{"source":"lexicon","parts":[
   {"letters":"a_e","sounds":["EY"],"spans":[[1,2],[3,4]]},…],
   "syllables":[{"text":"cake","stress":1}]}]}]}
  source: lexicon, ending, compound, author or rule (worked out from the letters).
  parts: graphemes in the order of their first letter; sounds: ARPAbet codes, none
  for a silent letter; spans: where the letters stand in the word, from 0.
  stress: 1 strongest, 2 weaker, 0 none.`,
  options: [
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), or json for programs',
      choices: Object.keys(formats),
    },
  ],
  run: sounds,
};

function sounds({ operands, options }: Call, host: Host): ExitCode {
  const words = operands
    .flatMap((operand) => operand.split(/[\s,;:.!?"\u2026\u201c\u201d()\u2010\u2011-]+/))
    .filter((word) => word !== '')
    .map((word): SoundedWord => ({ word, readings: /\d/.test(word) ? [] : host.phonics().readingsOf(word) }));
  if (words.length === 0) host.writeError(`There is no word in “${operands.join(' ')}”.\n`);
  const silent = words.filter(({ readings }) => readings.length === 0);
  for (const { word } of silent) {
    const why = /\d/.test(word)
      ? 'is written in digits, which say no sounds; write it in letters.'
      : 'has no letters that English gives a sound to.';
    host.writeError(`“${word}” ${why}\n`);
  }
  const format = formats[options.get('format') ?? 'text'] ?? soundsPage;
  host.writeOutput(format(words.filter(({ readings }) => readings.length > 0)));
  return silent.length > 0 || words.length === 0 ? exitCodes.unusable : exitCodes.well;
}

function soundsReport(words: readonly SoundedWord[]): string {
  return jsonLines(
    'words',
    words.map(({ word, readings }) => ({
      word,
      readings: readings.map(({ source, parts, syllables }) => ({
        source,
        parts: parts.map(jsonPart),
        syllables: syllables.map(({ text, stress }) => ({ text, stress })),
      })),
    })),
  );
}

function soundsPage(words: readonly SoundedWord[]): string {
  return words
    .map(({ word, readings }) =>
      // Readings that differ in nothing that is shown, such as the weak form of a short word, are shown once.
      [word, ...new Set(readings.map((reading) => readingLines(reading).join('\n')))].join('\n'),
    )
    .join('\n\n')
    .concat(words.length === 0 ? '' : '\n');
}

/** Graphemes over their sounds, then syllables and source. */
function readingLines({ source, parts, syllables }: Reading): readonly string[] {
  const rows = parts.map(({ letters, sounds: said, stress }) => {
    const marks = notated(said, 'dictionary', stress);
    return { letters, marks: marks === '' ? '–' : marks, codes: said.join(' ') || '–' };
  });
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, index) => {
        const row = rows[index];
        const width = Math.max(...[row?.letters, row?.marks, row?.codes].map((text) => widthOf(text ?? '')));
        return cell + ' '.repeat(width - widthOf(cell));
      })
      .join('  ')
      .trimEnd();
  // A title such as Mr. has syllables that none of its letters stand for.
  const isDivided = syllables.length > 1 && syllables.every(({ text }) => text !== '');
  const divided = isDivided
    ? syllables.map(({ text, stress }) => (stress === 1 ? `${text}ˈ` : text))
    : [syllables.map(({ text }) => text).join('')];
  return [
    `  ${line(rows.map(({ letters }) => letters))}`,
    `  ${line(rows.map(({ marks }) => marks))}`,
    `  ${line(rows.map(({ codes }) => codes))}`,
    `  ${counted(syllables.length, 'syllable')}: ${divided.join('·')}; ${sourceLabels[source]}`,
  ];
}

const sourceLabels: Readonly<Record<ReadingSource, string>> = {
  lexicon: 'from the lexicon',
  ending: 'a known word with an ending',
  compound: 'a compound of known words',
  author: 'the author’s own',
  rule: 'in no list; worked out from the letters',
};

/** Columns a text takes on a terminal: combining marks take none. */
function widthOf(text: string): number {
  return [...text.replace(/\p{M}/gu, '')].length;
}
