import { describe, expect, it } from 'vitest';
import { runningWords } from '../primer-1881/reviews.ts';
import { phonics } from '../support/reads.ts';
import { reviewed } from '../support/reviewed.ts';

// A compound of words the child reads, one of them as a whole, is read (by the whole lexicon, which knows the compounds).
const sequence = `lessons:
  - name: "1"
    spellings: [s as in sun, t as in top, m as in mud, o as in top, a as in map, n as in nap]
    high-frequency words: [school, house, some, book, to]
    endings: []
    syllables: 1
  - name: "2"
    syllables: 2
  - name: "3"
    spellings: [th as in thin, i as in sit, ng as in ring]
    endings: [s, es]
`;

describe('a compound of taught words', () => {
  it.each([
    ['schoolhouse', '1', 'not-taught', 'syllables'],
    ['schoolhouse', '2', 'high-frequency', ''],
    ['schoolbook', '2', 'high-frequency', ''],
    // Its plural needs the ending.
    ['schoolbooks', '2', 'not-taught', 'ending'],
    ['schoolbooks', '3', 'high-frequency', ''],
    // thing has to be read too.
    ['something', '2', 'not-taught', 'spelling spelling spelling spelling'],
    ['something', '3', 'high-frequency', ''],
    ['onto', '1', 'not-taught', 'syllables'],
    ['onto', '2', 'high-frequency', ''],
    ['into', '3', 'high-frequency', ''],
    // Neither some nor one is heard in these.
    ['handsome', '3', 'not-taught', 'spelling spelling spelling'],
    // Both halves are sounded out: no whole word is needed.
    ['tomtom', '3', 'decodable', ''],
  ])('%s at lesson %s is %s', (word, lesson, kind, missing) => {
    const found = wordIn(word, lesson);
    expect(found?.kind).toBe(kind);
    expect(found?.missing.map((thing) => thing.kind).join(' ')).toBe(missing);
  });
});

function wordIn(word: string, lesson: string) {
  const review = reviewed(`---\nlesson: "${lesson}"\n---\n${word}\n`, sequence, phonics);
  return runningWords(review)[0];
}
