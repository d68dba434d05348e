import { describe, expect, it } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../../server/src/sequence/teaching.ts';
import { createStoryIndex } from '../../../server/src/series/story-index.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { smallSequence, storyAt } from '../../support/small-lane.ts';

const sequence = smallSequence.replace('readable: 0', 'readable: 95');

function teaching(text: string): Teaching {
  return teachingOf(readSequence(text), packagePhonics);
}

/** An index of a story at each of the four lessons, judged by a sequence. */
function judgedIndex() {
  const index = createStoryIndex(packagePhonics);
  const by = teaching(sequence);
  for (const lesson of ['1', '2', '3', '4']) index.put(lesson, storyAt(lesson, 'Night sat.'));
  judge(index, by);
  for (const path of index.paths()) index.coverage(path, by);
  return index;
}

function judge(index: ReturnType<typeof createStoryIndex>, by: Teaching) {
  return index.paths().map((path) => index.standing(path, by)?.passes);
}

/** How often each change of the sequence makes a story be judged again. */
const changes: readonly (readonly [string, (text: string) => string, number])[] = [
  ['nothing', (text) => text, 0],
  ['a comment and another title', (text) => `# new\n${text.replace('Willow', 'Elm')}`, 0],
  ['a new last lesson', (text) => `${text}  - name: "5"\n    spellings: [d as in dot]\n`, 0],
  ['lesson 4', (text) => text.replace('ck as in lock', 'k as in kit'), 1],
  ['lesson 3', (text) => text.replace('igh as in light', 'd as in dot'), 2],
  ['lesson 1', (text) => text.replace('words: [the]', 'words: [the, night]'), 4],
  ['a target of the whole sequence', (text) => text.replace('sentence: 20', 'sentence: 1'), 4],
  // A dimension that a later lesson mentions is closed until then.
  ['the first ending, in the last lesson', (text) => `${text}    endings: [s]\n`, 4],
  ['the accent', (text) => `cot and caught: apart\n${text}`, 4],
  ['a pronunciation', (text) => `pronunciations: { night: n igh t }\n${text}`, 4],
];

describe('the index of many stories', () => {
  it.each(changes)('judges again after a change of %s what it concerns', (_, change, again) => {
    const index = judgedIndex();
    const before = index.judged;
    const changed = teaching(change(sequence));
    const standings = judge(index, changed);
    expect(index.judged - before).toBe(again);
    // And what it says without judging is what judging would say.
    const fresh = createStoryIndex(packagePhonics);
    for (const path of index.paths()) fresh.put(path, index.story(path)?.text ?? '');
    expect(standings).toEqual(judge(fresh, changed));
    const covered = (one: typeof index) => one.paths().map((path) => one.coverage(path, changed));
    expect(covered(index)).toEqual(covered(fresh));
  });

  it('knows what a change undone made of the stories', () => {
    const index = judgedIndex();
    judge(index, teaching(sequence.replace('igh as in light', 'd as in dot')));
    const before = index.judged;
    judge(index, teaching(sequence));
    expect(index.judged).toBe(before);
  });

  it('reads a text that is the same again no second time', () => {
    const index = judgedIndex();
    const story = index.story('1');
    expect(index.put('1', storyAt('1', 'Night sat.'))).toBe(false);
    expect(index.story('1')).toBe(story);
    expect(index.put('1', storyAt('1', 'Night sat in.'))).toBe(true);
    const before = index.judged;
    judge(index, teaching(sequence));
    expect(index.judged).toBe(before + 1);
  });

  it('keeps stories only, and forgets them', () => {
    const index = judgedIndex();
    expect(index.put('notes', '# Notes\n')).toBe(false);
    expect(index.put('1', '# Notes\n')).toBe(true);
    expect(index.drop('2')).toBe(true);
    expect(index.drop('2')).toBe(false);
    expect(index.paths()).toEqual(['3', '4']);
    expect(index.standing('1', teaching(sequence))).toBeUndefined();
    expect(index.standing('3', teaching('title: Empty\n'))).toBeUndefined();
  });
});
