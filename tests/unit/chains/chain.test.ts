import { describe, expect, it } from 'vitest';
import { buildChain } from '../../../server/src/chains/build-chain.ts';
import type { Chain, ChainWish } from '../../../server/src/chains/chain.ts';
import { linkWords } from '../../../server/src/chains/word-graph.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { createWordFinder } from '../../../server/src/words/find-words.ts';
import { stepTrouble } from '../../support/chain-check.ts';
import { handPhonics } from '../../support/hand-phonics.ts';
import { taughtAt } from '../../support/reviewed.ts';

const words = `
  mat   m=M a=AE1 t=T
  map   m=M a=AE1 p=P
  mate  m=M a_e=EY1 t=T
  at    a=AE1 t=T
  chat  ch=CH a=AE1 t=T
  chap  ch=CH a=AE1 p=P
  pit   p=P i=IH1 t=T
  lone  l=L o_e=OW1 n=N
  was   w=W a=AA1 s=Z
  wat   w=W a=AE1 t=T
`;
const lesson = `lessons:
  - name: "1"
    spellings: [m as in mat, a as in mat, t as in mat, p as in map, a_e as in mate, ch as in chat, i as in pit, l as in lone, o_e as in lone, n as in lone, w as in was, s as in was, a as in was]
`;
const phonics = handPhonics(words);
const teaching = teachingOf(readSequence(lesson), phonics);
const taught = taughtAt(lesson, '1', phonics);
const finder = createWordFinder(teaching, phonics);

function chain(wish: Partial<ChainWish>): Chain {
  return buildChain(finder, taught, phonics, { length: 4, seed: 1, ...wish });
}

/** Every step there is from a word, as `map: change t to p at the end`. */
function stepsFrom(word: string): readonly string[] {
  const found = finder.find(taught, {}).words;
  const nodes = linkWords(found, phonics);
  return (nodes.find((node) => node.found.word === word)?.links ?? [])
    .map(
      ({ to, step }) =>
        `${nodes[to]?.found.word}: ${step.kind} ${step.from ?? ''}>${step.to ?? ''} ${step.place}`,
    )
    .sort();
}

describe('one step', () => {
  it.each([
    [
      'mat',
      [
        'at: drop m> start',
        'chat: change m>ch start',
        'map: change t>p end',
        'mate: change a>a_e middle',
        'wat: change m>w start',
      ],
    ],
    ['at', ['chat: add >ch start', 'mat: add >m start', 'wat: add >w start']],
    ['lone', []],
    // The a of was is another grapheme than that of wat, and so is the s: two changes.
    ['was', []],
    ['pit', []],
  ])('from %s', (word, steps) => {
    expect(stepsFrom(word)).toEqual(steps);
  });
});

describe('a chain', () => {
  it('begins where it is told to', () => {
    expect(chain({ start: 'at' }).links[0]).toMatchObject({ found: { word: 'at' } });
  });

  it('that cannot be as long as wanted is the longest there is, and says so', () => {
    const { links, isComplete, isLongest } = chain({ length: 20 });
    // mate, map, chap, chat, at, wat and mat hang together; mate only by mat.
    expect(links).toHaveLength(7);
    expect({ isComplete, isLongest }).toEqual({ isComplete: false, isLongest: true });
  });

  it('of a word without neighbours is that word', () => {
    expect(chain({ start: 'lone' })).toMatchObject({
      links: { length: 1 },
      isComplete: false,
      isLongest: true,
    });
  });

  it.each(['night', 'zzz'])('cannot begin with %s', (start) => {
    expect(chain({ start })).toEqual({ links: [], isComplete: false, isLongest: true });
  });

  it('ends when its host says so, with what it has', () => {
    expect(chain({ length: 20, isCancelled: () => true }).links.length).toBeGreaterThan(0);
  });
});

describe('the check of chains in these tests', () => {
  it.each([
    ['an', 'pan', undefined],
    ['cake', 'lake', undefined],
    ['cap', 'cape', undefined],
    ['plan', 'pan', undefined],
    ['pan', 'pen', undefined],
    ['cat', 'dog', 'cat to dog is not one grapheme'],
    ['cat', 'act', 'cat to act is not one grapheme'],
    ['tap', 'taps', undefined],
    ['wash', 'cash', 'wash to cash is not one grapheme'],
    ['tap', 'tap', 'tap to tap is not one grapheme'],
    ['at', 'plat', 'at to plat is not one grapheme'],
  ])('%s to %s', (before, after, trouble) => {
    expect(stepTrouble(before, after, () => true)).toBe(trouble);
  });
});
