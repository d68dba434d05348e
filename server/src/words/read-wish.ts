import { notated } from '../phonics/notation.ts';
import { type Phoneme, phonemes } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import { resolveSpelling } from '../sequence/resolve-spelling.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { WantedSpelling } from './word-query.ts';

/** Reads a spelling as people write it: `sh`, `a_e`, `ow as in snow`. */
export function readSpelling(given: string, phonics: Phonics): WantedSpelling | Trouble {
  const [, letters = '', keyWord] = /^\s*([a-z_']+)(?:\s+as\s+in\s+(\S+))?\s*$/i.exec(given) ?? [];
  if (letters.replaceAll('_', '') === '') {
    return { trouble: `“${given}” is no spelling; write sh, a_e, st, or “ow as in snow”.` };
  }
  const wanted = letters.toLowerCase();
  if (keyWord === undefined) return { letters: wanted };
  const { pattern, problem } = resolveSpelling(
    { value: { letters: wanted, keyWord }, span: { start: 0, end: 0 } },
    phonics,
  );
  return pattern === undefined
    ? { trouble: problem()?.message ?? `“${given}” has no sound.` }
    : { letters: wanted, pattern };
}

/** Reads a sound: its code, its sign in either notation, or the name of a vowel as teachers say it, `long a`. */
export function readSound(given: string): Phoneme | Trouble {
  const code = phonemes.find((each) => each === given.toUpperCase()) ?? namedVowel(given);
  const marked = phonemes.find((each) =>
    (['dictionary', 'ipa'] as const).some(
      (notation) => notated([each], notation).normalize('NFC') === given.normalize('NFC'),
    ),
  );
  const sound = code ?? marked;
  if (sound !== undefined) return sound;
  const near = soundsNear(given).map((name) => `“${name}”`);
  const hint = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
  return {
    trouble: `“${given}” is not a sound.${hint} Write it as dictionaries do (ā, ĕ, th), as “long a” or “short e”, or by its code: ${phonemes.join(' ')}.`,
  };
}

/** What may have been meant: of a vowel's letter both its names, of all else the nearest code. */
function soundsNear(given: string): readonly string[] {
  const letter = given.trim().toLowerCase();
  if (Object.hasOwn(vowels.long, letter)) return [`long ${letter}`, `short ${letter}`];
  const code = nearestName(given, phonemes);
  return code === undefined ? [] : [code];
}

/** The vowels that the trade calls long and short (common practice, no source). */
const vowels = {
  long: { a: 'EY', e: 'IY', i: 'AY', o: 'OW', u: 'UW' },
  short: { a: 'AE', e: 'EH', i: 'IH', o: 'AA', u: 'AH' },
} as const;

function namedVowel(given: string): Phoneme | undefined {
  const [, length = '', letter = ''] = /^\s*(long|short)\s+([aeiou])\s*$/i.exec(given) ?? [];
  const named: Readonly<Record<string, Phoneme>> | undefined =
    vowels[length.toLowerCase() as 'long' | 'short'];
  return named?.[letter.toLowerCase()];
}

/** Why a value cannot be used. */
export interface Trouble {
  readonly trouble: string;
}

/** True for a value that could not be read. */
export function isTrouble(value: unknown): value is Trouble {
  return typeof value === 'object' && value !== null && 'trouble' in value;
}
