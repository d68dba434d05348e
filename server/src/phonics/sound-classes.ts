import type { Phoneme } from './phoneme.ts';
import { rowsOf } from './table.ts';

/** Names the class of the sounds a grapheme says; sounds in one class are the same for every verdict. */
export type SoundClasses = (letters: string, sounds: readonly Phoneme[]) => string;

/** Reads the table of merges (`server/data/sound-classes.tsv`, where each has its reason). */
export function readSoundClasses(text: string): SoundClasses {
  const merges = new Map<string, { readonly as: string; readonly letters: ReadonlySet<string> }[]>();
  for (const row of rowsOf(text, ['sounds', 'as', 'letters'])) {
    merges.set(row.sounds, [
      ...(merges.get(row.sounds) ?? []),
      { as: row.as, letters: new Set(row.letters.split(' ')) },
    ]);
  }
  return (letters, sounds) => {
    const written = sounds.join(' ');
    const merge = merges
      .get(written)
      ?.find(
        (each) =>
          each.letters.has('any') ||
          each.letters.has(letters) ||
          (letters.length > 1 && each.letters.has('team')),
      );
    return merge?.as ?? written;
  };
}
