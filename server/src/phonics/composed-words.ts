import type { AlignedPart } from './align.ts';
import { partsOfEnding } from './ending-parts.ts';
import { seamsOf } from './inflected-reading.ts';
import { endingSounds, type Split, splitsOf } from './inflection.ts';
import { type Entry, type Lexicon, partOfSpeech } from './lexicon.ts';
import { isVowel, type Phoneme } from './phoneme.ts';
import type { Part, Reading, Syllable } from './reading.ts';
import { placed } from './spans.ts';
import { divide } from './syllables.ts';
import { takesEnding } from './takes-ending.ts';

/** Readings of words by their letters, lower case. */
type ReadLetters = (word: string) => readonly Reading[];

/**
 * Reads a word the lexicon lacks from words it has: a base with an ending (*swigs*, *clomping*), a compound
 * (*pinecone*), or a word behind un or re (*unzip*). Empty when it is none of these.
 */
export function readComposed(word: string, lexicon: Lexicon, read: ReadLetters): readonly Reading[] {
  return (
    readWithEnding(word, lexicon, read) ??
    readCompound(word, lexicon, read) ??
    readWithPrefix(word, lexicon, read) ??
    []
  );
}

function readWithEnding(word: string, lexicon: Lexicon, read: ReadLetters): readonly Reading[] | undefined {
  for (const split of splitsOf(word)) {
    const base = lexicon.find(split.base);
    const isOwner = split.ending === "'s" && split.base !== '';
    if (!isOwner && !(base && takesEnding(split, word, { base: base.partsOfSpeech, whole: 0 }))) continue;
    const readings = read(split.base)
      .map((reading) => withEnding(word, split, reading, base?.seams ?? []))
      .filter((reading) => reading !== undefined);
    if (readings.length > 0) return readings;
  }
  // The possessive of a plural (the dogs' den) sounds like the plural.
  if (word.endsWith("s'")) return read(word.slice(0, -1)).map(asOwner);
  return undefined;
}

function asOwner(plural: Reading): Reading {
  const last = plural.syllables.length - 1;
  const syllables = plural.syllables.map((syllable, index) =>
    index === last ? { ...syllable, text: `${syllable.text}'` } : syllable,
  );
  return { ...plural, source: 'ending', syllables };
}

function withEnding(
  word: string,
  split: Split,
  base: Reading,
  inside: readonly number[],
): Reading | undefined {
  const stem = stemParts(split, base);
  if (!stem) return undefined;
  const last = base.parts.flatMap((part) => part.sounds).at(-1);
  const letters = word.slice(split.at);
  const sounds = last ? endingSounds(split.ending, split.change === 'f to v' ? 'V' : last)[0] : undefined;
  if (sounds === undefined) return undefined;
  const isSyllable = sounds.split(' ').some((code) => isVowel(code as Phoneme));
  // horse, horses: the e of the base goes to the ending es.
  if (split.ending === 's' && isSyllable && split.base.endsWith('e')) {
    return withEnding(word, { ...split, ending: 'es', change: 'dropped e', at: split.at - 1 }, base, inside);
  }
  const ending = partsOfEnding(split.ending, letters, sounds.split(' ') as Phoneme[]);
  const aligned = [...stem, ...ending];
  const parts = placed(word, aligned);
  if (!covers(word, parts)) return undefined;
  const seams = seamsOf(word, aligned, {
    ending: split.ending,
    change: split.change,
    endingParts: ending.length,
    baseReading: 0,
  });
  return {
    source: 'ending',
    parts,
    syllables: divide(word, parts, { ...seams, inside }),
    inflection: { ending: split.ending, base: split.base, reading: base, baseParts: stem.length },
  };
}

/** The base's parts as they stand before the ending: the e gone, the consonant doubled, y written i. */
function stemParts(split: Split, base: Reading): readonly AlignedPart[] | undefined {
  const parts: readonly AlignedPart[] = base.parts.map(({ letters, sounds, stress }) =>
    stress === undefined ? { letters, sounds } : { letters, sounds, stress },
  );
  const last = parts.at(-1);
  if (!last) return undefined;
  const renamed = (letters: string): readonly AlignedPart[] => [...parts.slice(0, -1), { ...last, letters }];
  switch (split.change) {
    case 'none':
      return parts;
    case 'doubled':
      return renamed(last.letters + (last.letters === 'c' ? 'k' : (last.letters.at(-1) ?? '')));
    case 'y to i':
      return last.letters.endsWith('y') ? renamed(`${last.letters.slice(0, -1)}i`) : undefined;
    case 'ie to y':
      return last.letters === 'ie' ? renamed('y') : undefined;
    case 'f to v': {
      const v: AlignedPart = { letters: last.letters.replace(/f+e?$/, 'v'), sounds: ['V'] };
      return last.sounds.join('') === 'F' ? [...parts.slice(0, -1), v] : undefined;
    }
    case 'dropped e':
      // tick-ling has two syllables: the weak vowel of le goes.
      if (last.letters === 'le' && /^(ing|y|er)$/.test(split.ending))
        return [...parts.slice(0, -1), { letters: 'l', sounds: ['L'] }];
      return withoutE(parts);
    case 'dropped le':
      return last.letters === 'le' ? parts.slice(0, -1) : undefined;
  }
}

function withoutE(parts: readonly AlignedPart[]): readonly AlignedPart[] | undefined {
  const split = parts.map((part) => part.letters.endsWith('_e')).lastIndexOf(true);
  if (split >= 0 && split >= parts.length - 3) {
    return parts.map((part, index) =>
      index === split ? { ...part, letters: part.letters.slice(0, -2) } : part,
    );
  }
  const last = parts.at(-1);
  if (!last?.letters.endsWith('e') || last.letters.length < 2) return undefined;
  return [...parts.slice(0, -1), { ...last, letters: last.letters.slice(0, -1) }];
}

function readCompound(word: string, lexicon: Lexicon, read: ReadLetters): readonly Reading[] | undefined {
  let best: { readonly at: number; readonly band: number } | undefined;
  for (let at = 3; at <= word.length - 3; at++) {
    const band = Math.min(halfBand(lexicon.find(word.slice(0, at))), halfBand(lexicon.find(word.slice(at))));
    if (band >= 1 && (!best || band > best.band)) best = { at, band };
  }
  if (!best) return undefined;
  const left = read(word.slice(0, best.at))[0];
  const right = read(word.slice(best.at))[0];
  const halves = [word.slice(0, best.at), word.slice(best.at)] as const;
  return left && right ? [{ ...joined(word, 'compound', left, right), compound: halves }] : undefined;
}

function halfBand(entry: Entry | undefined): number {
  return entry && entry.partsOfSpeech !== 0 ? entry.band : 0;
}

function readWithPrefix(word: string, lexicon: Lexicon, read: ReadLetters): readonly Reading[] | undefined {
  for (const prefix of ['un', 're'] as const) {
    const rest = word.slice(prefix.length);
    if (!word.startsWith(prefix) || rest.length < 3) continue;
    const entry = lexicon.find(rest);
    if (
      !entry ||
      entry.band < 1 ||
      (entry.partsOfSpeech & (partOfSpeech.verb | partOfSpeech.adjective)) === 0
    )
      continue;
    const right = read(rest)[0];
    const parts =
      prefix === 'un'
        ? ([
            { letters: 'u', sounds: ['AH'], stress: 2 },
            { letters: 'n', sounds: ['N'] },
          ] as const)
        : ([
            { letters: 'r', sounds: ['R'] },
            { letters: 'e', sounds: ['IY'], stress: 2 },
          ] as const);
    const left: Reading = {
      source: 'compound',
      parts: placed(prefix, parts),
      syllables: [{ text: prefix, stress: 2 }],
    };
    if (right) return [joined(word, 'compound', left, right)];
  }
  return undefined;
}

function joined(word: string, source: 'compound', left: Reading, right: Reading): Reading {
  const from = left.syllables.reduce((sum, syllable) => sum + syllable.text.length, 0);
  const weaker = (syllable: Syllable): Syllable =>
    syllable.stress === 1 && source === 'compound' ? { ...syllable, stress: 2 } : syllable;
  const parts: Part[] = right.parts.map((part) => ({
    ...part,
    spans: part.spans.map(([start, end]) => [start + from, end + from] as const),
  }));
  const isPrefix = left.parts.length === 2 && from === 2;
  const syllables = isPrefix
    ? [...left.syllables, ...right.syllables]
    : [...left.syllables, ...right.syllables.map(weaker)];
  return {
    source,
    parts: [...left.parts, ...parts],
    syllables: syllables.length > 0 ? syllables : [{ text: word, stress: 1 }],
  };
}

function covers(word: string, parts: readonly Part[]): boolean {
  const letters = parts.reduce(
    (sum, part) => sum + part.spans.reduce((count, [start, end]) => count + end - start, 0),
    0,
  );
  return letters === word.length;
}
