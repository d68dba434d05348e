import type { Entry } from '../../server/src/phonics/lexicon.ts';
import type { Phoneme } from '../../server/src/phonics/phoneme.ts';
import type { Part, Reading } from '../../server/src/phonics/reading.ts';
import { endsSyllable } from '../../server/src/phonics/structure.ts';

/** Shares of the spellings of each sound, in percent, by sound and spelling. */
export type Shares = ReadonlyMap<string, ReadonlyMap<string, number>>;

/**
 * Counts how often each sound is spelt each way in the first readings of words, with the sounds named as in the study of
 * 1966. Where the study's dictionary and ours write one thing in two ways, the study's way is counted (each with its reason):
 *
 * - r-vowels are one class each (near: IH R and IY R);
 * - the weak e that ends a syllable (*be-gin*) is long e there, IH here;
 * - the u of *-ful* is the vowel of *book* there, AH here;
 * - long u after t, d, n, s, z, l and th (*duty*, *new*) has the glide there (yū), none here;
 * - *er* of *her* and of *letter* are two sounds there: the row is the weak one;
 * - g and ge, v and ve, s and se, z and ze, n and ne, m and me: an e that lengthens nothing is counted with its consonant here,
 *   by itself there; final *le* is the same in both.
 */
export function sharesOf(words: Iterable<{ readonly entry: Entry; readonly reading: Reading }>): Shares {
  const counts = new Map<string, Map<string, number>>();
  for (const { reading } of words) {
    reading.parts.forEach((part, index) => {
      const sound = soundOf(part, reading, index);
      const spellings = counts.get(sound) ?? new Map<string, number>();
      counts.set(sound, spellings);
      const letters = withoutMuteE(part.letters, sound);
      spellings.set(letters, (spellings.get(letters) ?? 0) + 1);
    });
  }
  return new Map([...counts].map(([sound, spellings]) => [sound, percentsOf(spellings)]));
}

function percentsOf(spellings: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const all = [...spellings.values()].reduce((sum, count) => sum + count, 0);
  return new Map([...spellings].map(([letters, count]) => [letters, (100 * count) / all]));
}

function soundOf(part: Part, reading: Reading, index: number): string {
  const { letters, sounds, stress } = part;
  const written = sounds.join(' ');
  if (letters === 'e' && written === 'IH' && stress === 0 && endsSyllable(reading, part)) return 'IY';
  if (letters === 'u' && written === 'AH' && isFul(reading, index)) return 'UH';
  if (written === 'UW' && /^(u|u_e|ew|ue|eu|ui)$/.test(letters) && alveolars.has(lastSound(reading, index)))
    return 'Y UW';
  if (written === 'ER') return stress === 0 ? 'weak ER' : 'ER';
  if (written === 'AH') return 'AH';
  return rClasses[written] ?? written;
}

const alveolars: ReadonlySet<Phoneme | undefined> = new Set<Phoneme | undefined>([
  'T',
  'D',
  'N',
  'S',
  'Z',
  'L',
  'TH',
]);
const rClasses: Readonly<Record<string, string>> = {
  'IY R': 'IH R',
  'AE R': 'EH R',
  'EY R': 'EH R',
  'UW R': 'UH R',
  'Y UW R': 'Y UH R',
};

function lastSound(reading: Reading, index: number): Phoneme | undefined {
  return reading.parts[index - 1]?.sounds.at(-1);
}

function isFul(reading: Reading, index: number): boolean {
  const { parts } = reading;
  return parts[index - 1]?.letters === 'f' && /^ll?$/.test(parts[index + 1]?.letters ?? '') && index > 1;
}

function withoutMuteE(letters: string, sound: string): string {
  return letters !== 'dge' && /^[bcdfgklmnpstvz]+e$/.test(letters) && sound !== 'AH L'
    ? letters.slice(0, -1)
    : letters;
}
