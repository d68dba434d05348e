import { createPhonics } from './create-phonics.ts';
import { createLetterToSound, type LetterToSound } from './letter-to-sound.ts';
import { openLexicon } from './lexicon.ts';
import type { Phonics } from './phonics.ts';
import { openSections } from './sections.ts';

/** The phonics of the data file `server/generated/words.bin`, given as bytes. Throws when they are not of this version. */
export function openPhonics(file: Uint8Array): Phonics {
  const sections = openSections(file);
  let letterToSound: LetterToSound | undefined;
  return createPhonics(
    openLexicon(sections),
    (name) => sections.text(name),
    (letters) => {
      letterToSound ??= createLetterToSound(sections.bytes('letter-to-sound'));
      return letterToSound.pronounce(letters);
    },
  );
}
