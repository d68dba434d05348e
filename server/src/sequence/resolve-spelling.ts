import type { Phonics } from '../phonics/phonics.ts';
import type { Part, Reading } from '../phonics/reading.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { Problem } from '../text/problem.ts';
import type { Placed, SpellingLine } from './sequence.ts';
import type { TaughtSpelling } from './taught.ts';

/** What a spelling line teaches; no pattern when its key word cannot show it. */
export interface ResolvedSpelling {
  readonly pattern?: TaughtSpelling['pattern'];
  /** What is wrong or doubtful; worked out when it is asked for, since a story's review does not rest on it. */
  readonly problem: () => Problem | undefined;
}

/**
 * Finds the letters of `X as in W` in the key word W, on the borders of its graphemes: one grapheme, or several side by
 * side (`nk as in pink`). The likeliest reading of W that holds X counts. Where X stands twice with different sounds, the
 * stressed one is meant, else the first, and a warning says so.
 */
export function resolveSpelling({ value, span }: Placed<SpellingLine>, phonics: Phonics): ResolvedSpelling {
  const { letters, keyWord } = value;
  const readings = phonics.readingsOf(keyWord);
  const refuse = (message: string): ResolvedSpelling => ({
    problem: () => ({ message, span, severity: 'error' }),
  });
  const first = readings[0];
  if (first === undefined) {
    return refuse(`“${keyWord}” is not a word that could show a sound.`);
  }
  for (const reading of readings) {
    const places = placesOf(letters, reading);
    const chosen = stressedFirst(places);
    if (chosen === undefined) {
      continue;
    }
    const pattern = chosen.map((part) => ({
      letters: part.letters,
      sounds: part.sounds,
      soundClass: phonics.soundClass(part.letters, part.sounds),
      ...(part.stress === undefined ? {} : { stress: part.stress }),
    }));
    const problem = (): Problem | undefined => {
      const message = doubtOf(value, reading, places, chosen, phonics);
      return message === undefined ? undefined : { message, span, severity: 'warning' };
    };
    return { pattern, problem };
  }
  const bare = letters.replaceAll('_', '');
  return keyWord.toLowerCase().includes(bare) || letters.includes('_')
    ? refuse(`“${letters}” is not a grapheme of “${keyWord}”: ${keyWord} is ${graphemesOf(first)}.`)
    : refuse(`“${letters}” does not stand in “${keyWord}”, which is ${graphemesOf(first)}.`);
}

/** A word cut into its graphemes as a teacher writes it: `n-igh-t`, `c-a_e-k`. */
export function graphemesOf(reading: Reading): string {
  return reading.parts.map(({ letters }) => letters).join('-');
}

/** Every place of a reading where `letters` (`igh`, `st`, `a_e`, `all`) is the name of parts side by side. */
export function placesOf(letters: string, reading: Reading): Part[][] {
  const places: Part[][] = [];
  for (let from = 0; from < reading.parts.length; from++) {
    for (let to = from + 1; to <= reading.parts.length; to++) {
      const parts = reading.parts.slice(from, to);
      const name = nameOf(parts);
      if (name === letters) {
        places.push(parts);
      }
      if (name.replaceAll('_', '').length > letters.length) {
        break;
      }
    }
  }
  return places;
}

/** The letters of parts in the order of the word, with a low line where other letters stand between: `ake` of a_e and k. */
function nameOf(parts: readonly Part[]): string {
  const runs = parts.flatMap((part) => {
    const letters = part.letters.replaceAll('_', '');
    let used = 0;
    return part.spans.map(([start, end]) => {
      const run = { start, end, letters: letters.slice(used, used + end - start) };
      used += end - start;
      return run;
    });
  });
  runs.sort((left, right) => left.start - right.start);
  return runs
    .map((run, index) =>
      (runs[index - 1]?.end ?? run.start) === run.start ? run.letters : `_${run.letters}`,
    )
    .join('');
}

function stressedFirst(places: readonly Part[][]): Part[] | undefined {
  const rank = (parts: readonly Part[]): number =>
    Math.max(...parts.map(({ stress }) => [0, 2, 1][stress ?? 0] ?? 0));
  return [...places].sort((left, right) => rank(right) - rank(left))[0];
}

function doubtOf(
  { letters, keyWord }: SpellingLine,
  reading: Reading,
  places: readonly Part[][],
  chosen: readonly Part[],
  phonics: Phonics,
): string | undefined {
  const soundOf = (parts: readonly Part[]): string =>
    parts.map((part) => phonics.soundClass(part.letters, part.sounds)).join(' ');
  const other = places.find((parts) => soundOf(parts) !== soundOf(chosen));
  if (other !== undefined) {
    const which = chosen === places[0] ? 'The first one is' : 'The stressed one is';
    return `“${letters}” stands in “${keyWord}” (${graphemesOf(reading)}) more than once, with different sounds. ${which} taught; a key word with only one would be clearer.`;
  }
  if (reading.source === 'rule') {
    return `“${keyWord}” is in no word list; its sounds (${graphemesOf(reading)}) were worked out by rule. ${surerKeyWord({ letters, keyWord }, phonics)}`;
  }
  return isCommon({ letters, keyWord }, chosen, phonics)
    ? undefined
    : `“${keyWord}” is not a word in common use. ${surerKeyWord({ letters, keyWord }, phonics)}`;
}

/** A word that may be offered to writers, one that is kept from them for what it means, a name, or the usual key word. */
function isCommon({ keyWord }: SpellingLine, chosen: readonly Part[], phonics: Phonics): boolean {
  const isUsual = chosen.some(
    (part) => phonics.keyWordFor(part.letters, part.sounds, part.stress) === keyWord.toLowerCase(),
  );
  return (
    isUsual ||
    // A capital makes it a name; the list leaves out names, and most words with an apostrophe.
    /^[A-Z]|['’]/.test(keyWord) ||
    phonics.words.find(keyWord) !== undefined ||
    phonics.words.unfitFor(keyWord) !== undefined
  );
}

function surerKeyWord({ letters, keyWord }: SpellingLine, phonics: Phonics): string {
  const runs = letters.split('_');
  const holdsLetters = (word: string): boolean => new RegExp(runs.join('[a-z]+')).test(word);
  const known = phonics.words
    .startingWith(keyWord.charAt(0))
    .filter(({ word, band, isFamiliar }) => (isFamiliar || band >= 3) && holdsLetters(word))
    .map(({ word }) => word);
  const meant = nearestName(keyWord, known);
  return meant === undefined ? 'A common word makes a surer key word.' : `Did you mean “${meant}”?`;
}
