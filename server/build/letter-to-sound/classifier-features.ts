import type { WordContext } from './word-context.ts';

/** No letter has more features than this. */
export const mostFeatures = 160;

/**
 * Writes the features of the letter at a place as hashes of 32 bits and gives their number: windows of letters around
 * it, the tokens before it with the letters ahead, the vowels before it, where in the word it stands, how the word
 * begins and ends, and what its relatives say.
 */
export function writeFeatures(word: WordContext, at: number, hashes: Int32Array): number {
  let count = 0;
  const add = (hash: number): void => {
    hashes[count++] = hash;
  };
  addWindows(word, at, add);
  addTokensBefore(word, at, add);
  word.lookBack(at);
  const here = mix(3, word.letter(at));
  const near = mix(mix(here, word.letter(at - 1)), word.letter(at + 1));
  const nearAndNext = mix(near, word.letter(at + 2));
  const wide = mix(nearAndNext, word.letter(at - 2));
  const place = Math.min(3, word.groupsUpTo(at)) * 8 + Math.min(3, word.groupsBehind(at));
  const [vowel, vowelBefore] = word.vowels;
  for (const window of [here, near, nearAndNext]) add(mix(mix(4, vowel), window));
  add(mix(mix(mix(5, vowel), vowelBefore), near));
  for (const window of [here, near, nearAndNext, wide]) add(mix(mix(6, place), window));
  add(mix(mix(mix(7, place), vowel), near));
  const shape = mix(mix(12, word.pattern), Math.min(4, word.groupsBehind(at)));
  for (const window of [here, near, nearAndNext]) add(mix(shape, window));
  add(mix(mix(shape, vowel), here));
  const last = word.length - 1;
  add(mix(mix(mix(13, word.pattern % 27), word.groupsBehind(at)), mix(near, word.letter(last))));
  const end1 = word.letter(last);
  const end2 = mix(end1, word.letter(last - 1));
  const end3 = mix(end2, word.letter(last - 2));
  const end4 = mix(end3, word.letter(last - 3));
  add(mix(mix(8, end1), near));
  for (const end of [end2, end3]) {
    add(mix(mix(8, end), here));
    add(mix(mix(8, end), near));
  }
  add(mix(mix(8, end4), here));
  add(mix(mix(mix(9, end2), place), near));
  const start = mix(word.letter(0), word.letter(1));
  add(mix(mix(10, start), near));
  add(mix(mix(10, mix(start, word.letter(2))), near));
  addRelatives(word, at, place, add);
  return count;
}

function addWindows(word: WordContext, at: number, add: (hash: number) => void): void {
  for (let left = 0; left <= 6 && at - left >= -1; left++) {
    let hash = mix(1, left);
    for (let index = left; index >= 0; index--) hash = mix(hash, word.letter(at - index));
    add(hash);
    for (let right = 1; right <= 6 && left + right <= 9 && at + right <= word.length; right++) {
      hash = mix(hash, word.letter(at + right));
      add(hash);
    }
  }
}

function addTokensBefore(word: WordContext, at: number, add: (hash: number) => void): void {
  let hash = mix(2, word.letter(at));
  for (let back = 1; back <= 6 && at - back >= -1; back++) {
    hash = mix(hash, word.tokenAt(at - back));
    let ahead = hash;
    add(ahead);
    for (let right = 1; right <= 3 && at + right <= word.length; right++) {
      ahead = mix(ahead, word.letter(at + right) + 100 * right);
      add(ahead);
    }
  }
}

function addRelatives(word: WordContext, at: number, place: number, add: (hash: number) => void): void {
  const next = word.letter(at + 1);
  for (let index = 0; index < 4; index++) {
    word.relative(index, at);
    if (word.token < 0) continue;
    const kind = mix(mix(11 + (index >> 1), word.token), word.letter(at));
    const agreement = word.agreesBefore * 5 + word.agreesBehind;
    add(mix(kind, agreement));
    add(mix(kind, agreement * 8 + word.sameTokens + 1000));
    add(mix(mix(kind, agreement + 2000), next));
    add(mix(mix(kind, 3000 + word.agreesBehind * 8 + word.sameTokens), mix(next, word.letter(at + 2))));
    add(mix(mix(kind, 4000 + word.agreesBehind), place));
  }
}

function mix(hash: number, value: number): number {
  let mixed = Math.imul(hash ^ (value + 0x7f4a7c15), 0x85ebca6b);
  mixed ^= mixed >>> 15;
  return Math.imul(mixed, 0xc2b2ae35) ^ (mixed >>> 13);
}
