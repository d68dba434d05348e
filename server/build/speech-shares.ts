import { rowsOf } from '../src/phonics/table.ts';
import { tableText } from './sources.ts';
import { type SpeechPart, speechParts, type WordNet } from './word-net.ts';

/**
 * How much of a word's use is in each part of speech, 0 to 1 in all, from WordNet's tagged texts; the subject of a row of
 * `young-words.tsv` (actions, feelings and ways, colors …) counts as a few uses, since grown-up texts hardly have *hop*.
 */
export function speechShares(wordNet: WordNet): (word: string, part: SpeechPart) => number {
  const young = youngParts();
  return (word, part) => {
    const weightOf = (each: SpeechPart): number =>
      wordNet.sensesOf(word, each).length === 0
        ? 0
        : wordNet.usesOf(word, each) + 0.3 + (young.get(word)?.has(each) ? 3 : 0);
    const sum = speechParts.reduce((total, each) => total + weightOf(each), 0);
    return sum === 0 ? 0 : weightOf(part) / sum;
  };
}

/** The words of `young-words.tsv` that are written with small letters alone. */
export function youngWords(): readonly string[] {
  return [...youngParts().keys()];
}

function youngParts(): ReadonlyMap<string, ReadonlySet<SpeechPart>> {
  const found = new Map<string, Set<SpeechPart>>();
  for (const { subject, words } of rowsOf(tableText('young-words'), ['subject', 'words'])) {
    if (subject === 'small words' || subject === 'past forms') continue;
    const part = partOfSubject[subject] ?? 'noun';
    for (const word of words.split(' ')) {
      if (/^[a-z]+$/.test(word)) found.set(word, (found.get(word) ?? new Set()).add(part));
    }
  }
  return found;
}

/** Subjects that do not list nouns. */
const partOfSubject: Readonly<Record<string, SpeechPart>> = {
  actions: 'verb',
  'feelings and ways': 'adj',
  colors: 'adj',
  'numbers and time': 'noun',
  sounds: 'verb',
};
