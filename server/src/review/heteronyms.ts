import type { Reading } from '../phonics/reading.ts';

/**
 * Words with one spelling and two readings of different meaning, which only the sentence tells apart (*read* now, *read*
 * yesterday), each with sounds in a row that its likelier reading in stories for children has and the other has not.
 * Compiled by hand from common knowledge of English; words whose listed pronunciations differ in accent alone (*again*,
 * *either*) do not belong here.
 */
const table = `
  bass EY
  bow OW
  bowed AW
  bowing AW
  bows OW
  buffet EY
  close S
  closer S
  content EH N
  desert D EH
  deserts D EH
  digest AY
  does AH
  dove AH
  excuse UW Z
  excuses UW Z
  lead IY
  live IH
  lives IH
  minute IH N
  moped P T
  object AA
  objects AA
  polish AA
  present EH Z
  presents EH Z
  produce AH D
  project AA
  projects AA
  read IY
  rebel EH B
  rebels EH B
  record R EH
  records R EH
  sow OW
  sowed OW
  tear IH R
  tearing EH R
  tears IH R
  use Z
  uses UW Z
  wind IH
  winds IH
  wound UW`;

/** The table by word. */
export const likelierSounds: ReadonlyMap<string, string> = new Map(
  table
    .trim()
    .split('\n')
    .map((line) => line.trim().split(' '))
    .map(([word = '', ...sounds]) => [word, sounds.join(' ')]),
);

/**
 * The likelier of a heteronym's readings, the first where none has the sounds that the table names; undefined for every
 * other word. `word` is folded.
 */
export function likelierReading(word: string, readings: readonly Reading[]): Reading | undefined {
  const wanted = likelierSounds.get(word);
  if (wanted === undefined) return undefined;
  return readings.find((reading) => soundsOf(reading).includes(` ${wanted} `)) ?? readings[0];
}

function soundsOf({ parts }: Reading): string {
  return ` ${parts.flatMap(({ sounds }) => sounds).join(' ')} `;
}
