import { createCheapestReading } from './cheapest-reading.ts';
import { createPhonics } from './create-phonics.ts';
import { readInventory } from './inventory.ts';
import { openLexicon } from './lexicon.ts';
import type { Phonics } from './phonics.ts';

/** The phonics of the lexicon file `server/generated/lexicon.bin`, given as bytes. Throws when they are not one. */
export function openPhonics(lexiconBytes: Uint8Array): Phonics {
  const lexicon = openLexicon(lexiconBytes);
  let guess: ((letters: string) => ReturnType<ReturnType<typeof createCheapestReading>>) | undefined;
  return createPhonics(lexicon, (letters) => {
    guess ??= createCheapestReading(readInventory(lexicon.table('spellings')));
    return guess(letters);
  });
}
