import type { AlignedPart } from '../src/phonics/align.ts';
import type { Entry, StoredReading } from '../src/phonics/lexicon.ts';
import {
  blockSize,
  changeCodes,
  endingCodes,
  seamFollows,
  seamOfCompound,
  twoBytesFrom,
} from '../src/phonics/lexicon-format.ts';

/** The lexicon's sections of the data file, as `lexicon-format.ts` describes them. The same entries give the same bytes. */
export function encodeLexicon(
  entries: readonly Entry[],
): Readonly<Record<'lexicon' | 'index' | 'correspondences' | 'usefulness', Uint8Array>> {
  const sorted = [...entries].sort((left, right) =>
    left.word < right.word ? -1 : left.word > right.word ? 1 : 0,
  );
  const correspondences = correspondencesOf(sorted);
  const codes = new Map(correspondences.map((text, index) => [text, index]));
  const blocks: number[] = [];
  const index: number[] = [];
  let previous = '';
  for (const [place, entry] of sorted.entries()) {
    if (place % blockSize === 0) {
      const at = blocks.length;
      index.push(at & 0xff, (at >> 8) & 0xff, (at >> 16) & 0xff, (at >> 24) & 0xff);
      previous = '';
    }
    writeEntry(blocks, entry, previous, codes);
    previous = entry.word;
  }
  return {
    lexicon: Uint8Array.from(blocks),
    index: Uint8Array.from(index),
    correspondences: asciiBytes(correspondences.join('\n')),
    usefulness: Uint8Array.from(sorted, usefulnessByte),
  };
}

/** Text as bytes, one a character. Throws on a character that is not ASCII, with the text around it. */
export function asciiBytes(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => {
    const code = character.codePointAt(0) ?? 0;
    if (code > 127)
      throw new Error(
        `“${character}” is not ASCII, near: ${text.slice(Math.max(0, text.indexOf(character) - 40), text.indexOf(character) + 10)}`,
      );
    return code;
  });
}

function usefulnessByte({ word, usefulness, isFamiliar }: Entry): number {
  if (usefulness > 127) throw new Error(`“${word}” is more useful than a byte can tell: ${usefulness}.`);
  return 2 * usefulness + (isFamiliar ? 1 : 0);
}

function writeEntry(
  bytes: number[],
  entry: Entry,
  previous: string,
  codes: ReadonlyMap<string, number>,
): void {
  let shared = 0;
  while (shared < previous.length && previous[shared] === entry.word[shared]) shared += 1;
  bytes.push(shared, entry.word.length - shared, ...asciiBytes(entry.word.slice(shared)));
  const readings: number[] = [];
  for (const reading of entry.readings) writeReading(readings, reading, codes);
  const seams = seamBytes(entry);
  const length = 1 + seams.length + readings.length;
  const flags = (entry.band & 7) | (entry.partsOfSpeech << 3) | (seams.length > 0 ? 0x80 : 0);
  bytes.push(length & 0xff, length >> 8, flags, ...seams, ...readings);
}

function seamBytes({ compound, seams = [] }: Entry): readonly number[] {
  return seams.map(
    (at, index) => at | (at === compound ? seamOfCompound : 0) | (index < seams.length - 1 ? seamFollows : 0),
  );
}

function writeReading(bytes: number[], reading: StoredReading, codes: ReadonlyMap<string, number>): void {
  const { inflection, parts } = reading;
  bytes.push(parts.length | (inflection ? 0x80 : 0));
  if (inflection) {
    const last = parts[parts.length - 1]?.letters;
    const short =
      inflection.ending === 'ed' && last === 'd'
        ? 'd'
        : inflection.ending === "n't" && inflection.endingParts === 1
          ? "'t"
          : inflection.ending;
    const code = endingCodes.indexOf(short as (typeof endingCodes)[number]);
    bytes.push(code | (changeCodes.indexOf(inflection.change) << 5), inflection.baseReading);
  }
  for (const part of parts) {
    const code = codes.get(textOf(part)) ?? 0;
    if (code < twoBytesFrom) bytes.push(code);
    else bytes.push(twoBytesFrom | ((code - twoBytesFrom) >> 8), (code - twoBytesFrom) & 0xff);
  }
}

/** Every part that occurs, the most frequent first, as text: letters, sounds, stress. */
function correspondencesOf(entries: readonly Entry[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const entry of entries) {
    for (const { parts } of entry.readings) {
      for (const part of parts) counts.set(textOf(part), (counts.get(textOf(part)) ?? 0) + 1);
    }
  }
  return [...counts]
    .sort((left, right) => right[1] - left[1] || (left[0] < right[0] ? -1 : 1))
    .map(([text]) => text);
}

function textOf(part: AlignedPart): string {
  return `${part.letters}\t${part.sounds.join(' ')}\t${part.stress ?? ''}`;
}
