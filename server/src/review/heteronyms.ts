import type { Reading } from '../phonics/reading.ts';

/**
 * Words with one spelling and two readings of different meaning, which only the sentence tells apart (*read* now, *read*
 * yesterday), each with the part that its likelier reading in stories for children has. Compiled by hand from common
 * knowledge of English; words whose listed pronunciations differ in accent alone (*again*, *either*) do not belong here.
 */
const table = `
  bass a=EY
  bow ow=OW
  bowed ow=AW
  bowing ow=AW
  bows ow=OW
  buffet et=EY
  close s=S
  closer s=S
  content e=EH
  desert e=EH
  deserts e=EH
  digest i=AY
  does oe=AH
  dove o_e=AH
  excuse s=Z
  excuses s=Z
  lead ea=IY
  live i=IH
  lives i=IH
  minute i=IH
  moped ed=T
  object o=AA
  objects o=AA
  polish o=AA
  present e=EH
  presents e=EH
  produce o=AH
  project o=AA
  projects o=AA
  read ea=IY
  rebel e=EH
  rebels e=EH
  record e=EH
  records e=EH
  refuse e=IH
  separate te=T
  sow ow=OW
  sowed ow=OW
  tear ear=IH+R
  tearing ear=EH+R
  tears ear=IH+R
  use s=Z
  uses s=Z
  wind i=IH
  winds i=IH
  wound ou=UW`;

/** The table by word: the part that names the likelier reading, as `letters=SOUNDS`. */
export const likelierParts: ReadonlyMap<string, string> = new Map(
  table
    .trim()
    .split('\n')
    .map((line) => line.trim().split(' '))
    .map(([word = '', part = '']) => [word, part]),
);

/**
 * The likelier of a heteronym's readings, the first where none has the part that the table names; undefined for every
 * other word. `word` is folded.
 */
export function likelierReading(word: string, readings: readonly Reading[]): Reading | undefined {
  const wanted = likelierParts.get(word);
  if (wanted === undefined) return undefined;
  return (
    readings.find(({ parts }) =>
      parts.some(({ letters, sounds }) => `${letters}=${sounds.join('+')}` === wanted),
    ) ?? readings[0]
  );
}
