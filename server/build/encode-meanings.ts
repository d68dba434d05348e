import { blockSize, closenessSteps, followBits } from '../src/words/thesaurus-format.ts';
import { asciiBytes } from './encode-lexicon.ts';
import type { Kin } from './meanings.ts';

/** A word with its use and its kin in each part of speech, in the order of the format. */
export interface MeaningEntry {
  readonly word: string;
  /** Shares of its use, 0 to 1. */
  readonly parts: readonly { readonly share: number; readonly kin: readonly Kin[] }[];
}

/** The sections of the data file that `thesaurus-format.ts` describes, tables aside. The same entries give the same bytes. */
export function encodeMeanings(
  entries: readonly MeaningEntry[],
): Readonly<Record<'targets' | 'meanings' | 'meanings-index', Uint8Array>> {
  const targets = [
    ...new Set(entries.flatMap(({ parts }) => parts.flatMap(({ kin }) => kin.map(({ word }) => word)))),
  ].sort();
  const numbers = new Map(targets.map((word, index) => [word, index]));
  const bytes: number[] = [];
  const index: number[] = [];
  let previous = '';
  const sorted = [...entries].sort((one, other) => (one.word < other.word ? -1 : 1));
  for (const [place, { word, parts }] of sorted.entries()) {
    if (place % blockSize === 0) {
      const at = bytes.length;
      index.push(at & 0xff, (at >> 8) & 0xff, (at >> 16) & 0xff, (at >> 24) & 0xff);
      previous = '';
    }
    let shared = 0;
    while (shared < previous.length && previous[shared] === word[shared]) shared += 1;
    bytes.push(shared, word.length - shared, ...asciiBytes(word.slice(shared)));
    previous = word;
    const shares = parts.map(({ share }) => (share === 0 ? 0 : Math.max(1, Math.round(share * 15))));
    const own = [
      ((shares[0] ?? 0) << 4) | (shares[1] ?? 0),
      ((shares[2] ?? 0) << 4) | (shares[3] ?? 0),
      ...parts.flatMap(({ kin }, part) => (shares[part] === 0 ? [] : kinBytes(kin, numbers))),
    ];
    bytes.push(own.length & 0xff, own.length >> 8, ...own);
  }
  return {
    targets: asciiBytes(targets.join(' ')),
    meanings: Uint8Array.from(bytes),
    'meanings-index': Uint8Array.from(index),
  };
}

function kinBytes(kin: readonly Kin[], numbers: ReadonlyMap<string, number>): number[] {
  const placed = kin
    .map((each) => ({ ...each, number: numbers.get(each.word) ?? 0 }))
    .sort((one, other) => one.number - other.number);
  const bytes = [placed.length];
  let before = 0;
  for (const { number, closeness, frames } of placed) {
    const step = number - before;
    before = number;
    if (step < 255) bytes.push(step);
    else bytes.push(255, step & 0xff, step >> 8);
    bytes.push(
      Math.max(1, Math.round(closeness * closenessSteps)) |
        (frames.object ? followBits.object : 0) |
        (frames.nothing ? followBits.nothing : 0) |
        (frames.place ? followBits.place : 0),
    );
  }
  return bytes;
}
