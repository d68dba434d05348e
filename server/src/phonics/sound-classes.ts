import type { Phoneme } from './phoneme.ts';
import { rowsOf } from './table.ts';

/** Names the class of the sounds a grapheme says; sounds in one class are the same for every verdict. */
export type SoundClasses = (letters: string, sounds: readonly Phoneme[], accent?: Accent) => string;

/** Whether the children say *cot* and *caught* with one vowel or with two. */
export type Accent = 'merged' | 'apart';

/** Reads the table of merges (`server/data/sound-classes.tsv`, where each has its reason). */
export function readSoundClasses(text: string): SoundClasses {
  const merges = new Map<string, Merge[]>();
  for (const row of rowsOf(text, ['sounds', 'as', 'letters', 'accent'])) {
    const merge = {
      as: row.as,
      letters: new Set(row.letters.split(' ')),
      onlyMerged: row.accent === 'merged',
    };
    merges.set(row.sounds, [...(merges.get(row.sounds) ?? []), merge]);
  }
  return (letters, sounds, accent = 'merged') => {
    const written = sounds.join(' ');
    const merge = merges
      .get(written)
      ?.find((each) => isFor(each, letters) && !(each.onlyMerged && accent === 'apart'));
    return merge?.as ?? written;
  };
}

interface Merge {
  readonly as: string;
  readonly letters: ReadonlySet<string>;
  readonly onlyMerged: boolean;
}

function isFor({ letters: own }: Merge, letters: string): boolean {
  return own.has('any') || own.has(letters) || (letters.length > 1 && own.has('team'));
}
