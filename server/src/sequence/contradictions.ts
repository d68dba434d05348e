import type { Phonics } from '../phonics/phonics.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
import { placesOf } from './resolve-spelling.ts';
import type { TaughtSpelling } from './taught.ts';

/** A spelling with the place of its line in the file. */
export interface PlacedSpelling {
  readonly spelling: TaughtSpelling;
  readonly span: Span;
}

/**
 * Spellings whose key words no longer show one sound. Two lines of the same letters with different sounds contradict each
 * other when one of their key words is also read with the other's sound: after `ow as in snow` a child may read *bow* both
 * ways, so that `ow as in bow`, before or after it, says nothing for sure. Counted are words of two meanings, not what
 * accents vary. The line of the later lesson is marked; two lines of one lesson are taught side by side. `spellings` come in the order of the file.
 */
export function contradictions(spellings: readonly PlacedSpelling[], phonics: Phonics): readonly Problem[] {
  const problems: Problem[] = [];
  const byLetters = new Map<string, TaughtSpelling[]>();
  for (const { spelling, span } of spellings) {
    const { letters } = spelling.line;
    const before = byLetters.get(letters) ?? [];
    const message = messageFor(spelling, before, phonics);
    if (message !== undefined) problems.push({ message, span, severity: 'warning' });
    byLetters.set(letters, [...before, spelling]);
  }
  return problems;
}

function messageFor(
  later: TaughtSpelling,
  before: readonly TaughtSpelling[],
  phonics: Phonics,
): string | undefined {
  for (const earlier of before) {
    if (earlier.lesson === later.lesson || soundsOf(earlier) === soundsOf(later)) continue;
    const where = `lesson ${earlier.lesson.name}`;
    const { letters } = later.line;
    if (isAlsoRead(earlier.line.keyWord, letters, soundsOf(later), phonics)) {
      return `“${earlier.line.keyWord}”, the key word of “${shown(earlier)}” in ${where}, is also read with the sound that ${letters} has in “${later.line.keyWord}”. Give ${where} a key word that is read in one way.`;
    }
    if (isAlsoRead(later.line.keyWord, letters, soundsOf(earlier), phonics)) {
      return `“${later.line.keyWord}” is also read with the sound of “${shown(earlier)}”, which ${where} has taught. A key word that is read in one way shows the new sound.`;
    }
  }
  return undefined;
}

/** Whether some reading of a word has these sounds in these letters. */
function isAlsoRead(word: string, letters: string, sounds: string, phonics: Phonics): boolean {
  const readings = phonics.readingsOf(foldedWord(word));
  return (
    phonics.heteronyms.sensesOf(word) !== undefined &&
    readings.some((reading) =>
      placesOf(letters, reading).some(
        (parts) => parts.map((part) => phonics.soundClass(part.letters, part.sounds)).join(' ') === sounds,
      ),
    )
  );
}

function soundsOf({ pattern }: TaughtSpelling): string {
  return pattern.map(({ soundClass }) => soundClass).join(' ');
}

function shown({ line }: TaughtSpelling): string {
  return `${line.letters} as in ${line.keyWord}`;
}
