import { isVowel } from './phoneme.ts';
import type { Part, Reading } from './reading.ts';

/** Consonant graphemes that stand together in one syllable, each with its own sound. */
export interface ConsonantRun {
  /** Where in its syllable: before the vowel, after it; `three` for three or more, wherever they stand. */
  readonly place: 'start' | 'end' | 'three';
  /** Its letters, as they stand in the word. */
  readonly letters: string;
  /** Index of its first part in the reading, and just past its last. */
  readonly from: number;
  readonly to: number;
}

/** True for a grapheme with a vowel among its sounds: a vowel letter or team, vowel and r, `le` in *little*. */
export function saysVowel(part: Part): boolean {
  return part.sounds.some(isVowel);
}

/**
 * The consonant blends of a reading, from its sounds and syllables and not from its letters: *lunch* ends in one, *ring*
 * does not, *monster* has `st` and *sunset* none. A grapheme of two sounds (x, qu) is one, a silent letter none; a doubled
 * consonant cut by the syllable border belongs to the syllable it opens.
 */
export function consonantRuns(reading: Reading): readonly ConsonantRun[] {
  const syllables = syllableOfParts(reading);
  const runs: ConsonantRun[] = [];
  let members: number[] = [];
  let afterVowel = false;
  const close = (): void => {
    const first = members[0];
    const last = members.at(-1);
    if (first !== undefined && last !== undefined && members.length > 1) {
      const place = members.length > 2 ? 'three' : afterVowel ? 'end' : 'start';
      const letters = members.map((index) => reading.parts[index]?.letters ?? '').join('');
      runs.push({ place, letters, from: first, to: last + 1 });
    }
    members = [];
  };
  reading.parts.forEach((part, index) => {
    if (index > 0 && syllables[index] !== syllables[index - 1]) {
      close();
      afterVowel = false;
    }
    if (saysVowel(part)) {
      close();
      afterVowel = true;
    } else if (part.sounds.length > 0) {
      members.push(index);
    }
  });
  close();
  return runs;
}

/**
 * The syllable, from 0, of each part of a reading: the one its first run of letters ends in.
 * The e of a split grapheme does not count, nor does anything that stands past the last syllable's text.
 */
export function syllableOfParts(reading: Reading): readonly number[] {
  const ends: number[] = [];
  let end = 0;
  for (const { text } of reading.syllables) {
    end += text.length;
    ends.push(end);
  }
  const last = Math.max(0, ends.length - 1);
  return reading.parts.map((part) => {
    const letterEnd = part.spans[0]?.[1] ?? 0;
    const index = ends.findIndex((border) => letterEnd <= border);
    return index === -1 ? last : index;
  });
}

/** True when a syllable ends with the part: the o of *o-pen*; not of *cot-ton*, nor the a of *ap-ple*, cut inside pp. */
export function endsSyllable(reading: Reading, part: Part): boolean {
  const letterEnd = part.spans.at(-1)?.[1];
  let end = 0;
  for (const { text } of reading.syllables) {
    end += text.length;
    if (end === letterEnd) {
      return true;
    }
  }
  return false;
}
