import { expect, test } from 'vitest';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { reviewed } from '../support/reviewed.ts';

/** A lesson with these spellings, whole words and endings, and what it makes of contractions (common practice, no source). */
function kinds(lesson: string, words: string): readonly string[] {
  const sequence = `title: Contractions\nlessons:\n  - name: "1"\n${lesson}`;
  expect(teachingOf(readSequence(sequence), packagePhonics).problems).toEqual([]);
  const { pages } = reviewed(`---\nlesson: "1"\n---\n${words}\n`, sequence, packagePhonics);
  return pages.flatMap((page) => page.reviewed.words.map(({ word, kind }) => `${word.text}: ${kind}`));
}

const spellings = 'd as in dog, n as in nap, w as in wet, c as in cat, a as in map, i as in sit, s as in his';

test('a contraction with not is read by its own sounds once n’t is open, also where its vowel is another than its base’s', () => {
  const lesson = `    spellings: [${spellings}, o as in go]\n    endings: ["n't"]\n`;
  expect(kinds(lesson, "can't isn't didn't don't won't")).toEqual([
    "can't: decodable",
    "isn't: decodable",
    "didn't: decodable",
    "don't: decodable",
    "won't: decodable",
  ]);
});

test('who knows do and will as wholes does not read don’t and won’t by them', () => {
  const lesson = `    spellings: [${spellings}]\n    high-frequency words: [do, will, did]\n    endings: ["n't"]\n`;
  expect(kinds(lesson, "didn't don't won't")).toEqual([
    "didn't: decodable",
    "don't: not-taught",
    "won't: not-taught",
  ]);
});

test('none is read before n’t is open', () => {
  const lesson = `    spellings: [${spellings}, o as in go]\n    endings: [s]\n`;
  expect(kinds(lesson, "can't don't won't")).toEqual([
    "can't: not-taught",
    "don't: not-taught",
    "won't: not-taught",
  ]);
});
