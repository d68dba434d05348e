import { rules } from '../review/rules/registry.ts';
import { checkReport } from './check-json.ts';
import { isWithin, limitOptions, pastLimits, readCheckLimits } from './check-limits.ts';
import { type CheckedAll, checkSarif } from './check-sarif.ts';
import { type CheckedStory, checkStory, sequenceComplaint } from './check-story.ts';
import { checkPage } from './check-text.ts';
import { type Call, type Command, type ExitCode, exitCodes } from './command.ts';
import { type Complaint, complain } from './complaint.ts';
import { findTexts } from './find-texts.ts';
import type { Host } from './host.ts';
import { createSequenceFinder } from './sequence-finder.ts';

/** How `check` can write what it found; the first is the one for people. */
const formats: Readonly<Record<string, (checked: CheckedAll, host: Host) => string>> = {
  text: checkPage,
  json: checkReport,
  sarif: checkSarif,
};

/** `check PATH…`: reviews stories and tells whether they pass. */
export const checkCommand: Command = {
  name: 'check',
  summary: 'checks every story in files and folders against the sequence',
  operands: 'PATH…',
  help: `Reviews every story in the files and folders: what the children cannot read yet
at the story's lesson, and the targets of the sequence. A markdown file is a
story when its front matter has a lesson. The sequence is the nearest
sequence.yaml, looked for from the story's folder upwards, or the file that the
story names.

A story passes when it reaches its readable target, misses no other target and
nothing is wrong in its front matter.

With --format json, a story a line:
  {"version":1,"stories":[{"path":…,"title":…,"lesson":NAME,
   "counts":{"words":0,"decodable":0,"high-frequency":0,"name":0,
    "story-word":0,"not-taught":0},
   "readable":0.0,"decodable":0.0,"target":0.95,"passes":false,
   "words":[{"text":"night","page":1,"line":9,"column":4,"kind":"not-taught",
    "new":false,"parts":[{"letters":"igh","sounds":["AY"],"spans":[[1,4]]},…],
    "missing":[{"spelling":"igh","asIn":"light","lesson":NAME},…]},…],
   "sentences":[{"line":9,"words":7,"text":…},…],
   "findings":[{"rule":…,"severity":"warning","line":9,"column":4,"endLine":9,
    "endColumn":9,"message":…},…]}],
  "sequenceProblems":[{"path":…,"line":9,"column":4,"severity":"error","message":…}],
  "unusable":[{"path":…,"line":3,"column":9,"message":…}],"leftAlone":["README.md"]}
  Shares go from 0 to 1; words of the title count in neither counts nor words.
  Lines and columns count from 1, columns in UTF-16 units. kind: decodable,
  high-frequency, name, story-word or not-taught. new: it practises what is new in
  the lesson. parts: graphemes in the order of their first letter, with ARPAbet
  codes, and where their letters stand in the word. missing: a spelling with its
  key word, or {"form":"ending|blend|syllables","value":…,"lesson":NAME}, a blend
  with its "letters"; lesson is null where none teaches it. severity: error,
  warning or information. unusable: files that could not be checked, and why, with the
  place where there is one. leftAlone: markdown files that name no lesson.

What is found, by rule:
${rules.map(({ id, description }) => `  ${id.padEnd(29)}${description}`).join('\n')}`,
  options: [
    {
      name: 'lesson',
      value: 'NAME',
      description: 'checks every file at this lesson, also plain text and markdown without one',
    },
    { name: 'sequence', value: 'FILE', description: 'uses this sequence for every story' },
    {
      name: 'format',
      value: 'FORMAT',
      description: 'text for people (default), json for programs, or sarif for code hosts',
      choices: Object.keys(formats),
    },
    ...limitOptions,
  ],
  run: check,
};

function check({ operands, options }: Call, host: Host): ExitCode {
  const lesson = options.get('lesson');
  const sequence = options.get('sequence');
  const limits = readCheckLimits(options);
  if ('option' in limits) {
    complain({ path: limits.option, message: limits.message }, host);
    return exitCodes.unusable;
  }
  const { texts, complaints } = findTexts(operands, { plainText: lesson !== undefined }, host);
  const sequences = createSequenceFinder(host);
  const stories: CheckedStory[] = [];
  const unusable: Complaint[] = [...complaints];
  const leftAlone: string[] = [];
  const misnamed = sequenceComplaint(sequence, sequences, host);
  if (misnamed !== undefined) unusable.push(misnamed);
  // Without its sequence no story can be checked, and the same would be said of each.
  for (const [index, found] of misnamed === undefined ? texts.entries() : []) {
    if (texts.length > 50 && index % 20 === 0) host.showProgress(`Checking ${index + 1} of ${texts.length}`);
    const outcome = checkStory(found, { lesson, sequence }, sequences, host);
    if (outcome.kind === 'checked') stories.push(outcome.checked);
    if (outcome.kind === 'unusable') unusable.push(...outcome.complaints);
    if (outcome.kind === 'passed-by') leftAlone.push(found.path);
  }
  host.showProgress('');
  if (stories.length === 0 && unusable.length === 0) {
    unusable.push({
      path: operands.join(' '),
      message:
        'There is no story here: no markdown file whose front matter has a lesson. With --lesson NAME every file is checked.',
    });
  }
  for (const complaint of unusable) complain(complaint, host);
  const format = formats[options.get('format') ?? 'text'];
  const { version } = host;
  const sequenceTroubles = sequences.troubles();
  const checked = { stories, complaints: unusable, sequenceTroubles, leftAlone, version };
  host.writeOutput(format?.(checked, host) ?? '');
  for (const line of pastLimits(stories, limits)) host.writeError(`${line}\n`);
  if (unusable.length > 0 || sequences.errors() > 0) return exitCodes.unusable;
  return isWithin(stories, limits) ? exitCodes.well : exitCodes.fallsShort;
}
