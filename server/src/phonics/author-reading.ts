import type { AlignedPart } from './align.ts';
import { folded } from './folded-letters.ts';
import { isVowel, type Stress } from './phoneme.ts';
import type { Phonics } from './phonics.ts';
import type { Part, Reading } from './reading.ts';
import { placed } from './spans.ts';
import { divide } from './syllables.ts';

/** What a writer's own pronunciation comes to: a reading, or what is wrong with it and where. */
export type AuthorReading =
  | { readonly reading: Reading }
  | {
      /** A sentence for the writer. */
      readonly message: string;
      /** Offsets in the text of the pronunciation. */
      readonly start: number;
      readonly end: number;
    };

/**
 * Reads a pronunciation written by graphemes: `p-l-i-m`, and where a grapheme does not say its usual sound, a key word in
 * brackets in which it does: `r-ea(bread)-d`, `Zh(this)…`. A cut that a known reading of the word has takes that reading's
 * sounds for every grapheme without a key word; any other takes the grapheme's most regular sound.
 */
export function readAuthor(word: string, text: string, phonics: Phonics): AuthorReading {
  const graphemes = [...text.matchAll(/([^\s()\-\u2010\u2011]+)(?:\(([^()]*)\))?/g)].map((match) => ({
    written: (match[1] ?? '').toLowerCase(),
    keyWord: match[2]?.trim().replace(/^as in\s+/, ''),
    start: match.index,
    end: match.index + match[0].length,
  }));
  const whole = { start: 0, end: text.length };
  if (graphemes.length === 0)
    return { message: `Write “${word}” grapheme by grapheme, with hyphens between them.`, ...whole };
  const { letters } = folded(word);
  const known = phonics.readingsOf(word).find((reading) =>
    sameCut(
      reading.parts,
      graphemes.map((grapheme) => grapheme.written),
    ),
  );
  const aligned: AlignedPart[] = [];
  for (const [index, grapheme] of graphemes.entries()) {
    const place = { start: grapheme.start, end: grapheme.end };
    const part =
      grapheme.keyWord === undefined
        ? (known?.parts[index] ?? phonics.regularPart(grapheme.written))
        : partIn(grapheme.keyWord, grapheme.written, phonics);
    if (!part) {
      const message =
        grapheme.keyWord === undefined
          ? `“${grapheme.written}” is no grapheme that is known; give its letters another cut, or a key word in brackets.`
          : `“${grapheme.written}” is not a grapheme of “${grapheme.keyWord}”, which is ${cutOf(phonics.readingsOf(grapheme.keyWord)[0])}.`;
      return { message, ...place };
    }
    aligned.push({
      letters: part.letters,
      sounds: part.sounds,
      ...(part.stress === undefined ? {} : { stress: part.stress }),
    });
  }
  const parts = placed(letters, stressed(aligned, known));
  if (!spell(letters, parts)) return { message: `These graphemes do not spell “${word}”.`, ...whole };
  return { reading: { source: 'author', parts, syllables: known?.syllables ?? divide(letters, parts) } };
}

function sameCut(parts: readonly Part[], cut: readonly string[]): boolean {
  return parts.length === cut.length && parts.every((part, index) => part.letters === cut[index]);
}

function partIn(keyWord: string, letters: string, phonics: Phonics): Part | undefined {
  for (const reading of phonics.readingsOf(keyWord)) {
    const part = reading.parts.find((each) => each.letters === letters);
    if (part) return part;
  }
  return undefined;
}

function cutOf(reading: Reading | undefined): string {
  return reading ? reading.parts.map((part) => part.letters).join('-') : 'not a word that can be read';
}

/** The stress of the known reading, or the first vowel stressed and the others not. */
function stressed(parts: readonly AlignedPart[], known: Reading | undefined): readonly AlignedPart[] {
  let next: Stress = 1;
  return parts.map((part, index) => {
    if (!part.sounds.some(isVowel)) return { letters: part.letters, sounds: part.sounds };
    const stress = known?.parts[index]?.stress ?? next;
    next = 0;
    return { letters: part.letters, sounds: part.sounds, stress };
  });
}

function spell(letters: string, parts: readonly Part[]): boolean {
  const written = [...letters].map(() => '');
  for (const part of parts) {
    const own = part.letters.endsWith('_e') ? `${part.letters.slice(0, -2)}e` : part.letters;
    let at = 0;
    for (const [start, end] of part.spans) {
      for (let place = start; place < end; place++) {
        if (place >= letters.length) return false;
        written[place] = own[at++] ?? '';
      }
    }
    if (at !== own.length) return false;
  }
  return written.join('') === letters;
}
