import { describe, expect, it } from 'vitest';
import type { ReviewedWord } from '../../../server/src/review/review.ts';
import { handPhonics } from '../../support/hand-phonics.ts';
import { reviewed } from '../../support/reviewed.ts';

const phonics = handPhonics(
  `map     m=M a=AE1 p=P
   mud     m=M u=AH1 d=D
   sun     s=S u=AH1 n=N
   top     t=T o=AA1 p=P
   eat     ea=IY1 t=T
   ten     t=T e=EH1 n=N
   rug     r=R u=AH1 g=G
   light   l=L igh=AY1 t=T
   his     h=HH i=IH1 s=Z
   dot     d=D o=AO1 t=T
   head    h=HH ea=EH1 d=D
   sat     s=S a=AE1 t=T
   said    s=S ai=EH1 d=D
   night   n=N igh=AY1 t=T
   mat     m=M a=AE1 t=T
   mats    m=M a=AE1 t=T s=S < mat + s
   the     th=DH e=AH0
   the     th=DH e=IY0
   read    r=R ea=EH1 d=D
   read    r=R ea=IY1 d=D
   again   a=AH0 g=G ai=EY1 n=N / a-gain
   again   a=AH0 g=G ai=EH1 n=N / a-gain
   tam     t=T a=AE1 m=M
   zat     z=Z a=AE1 t=T
   mist    m=M i=IH1 s=S t=T
   mists   m=M i=IH1 s=S t=T s=S < mist + s`,
  ['zat'],
);

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [m as in map, p as in map, a as in map, s as in sun, n as in sun, t as in top]
    high-frequency words: [the, Mr.]
  - name: "2"
    spellings: [d as in mud, o as in top, r as in rug]
    high-frequency words: [said, sat]
  - name: "3"
    spellings: [e as in ten]
  - name: "4"
    spellings: [ea as in eat]
    endings: [s]
  - name: "5"
    spellings: [igh as in light]
`;

/** Reviews one sentence and gives its words. */
function words(sentence: string, { lesson = '2', frontMatter = '' } = {}): readonly ReviewedWord[] {
  const review = reviewed(`---\nlesson: "${lesson}"\n${frontMatter}---\n${sentence}\n`, sequence, phonics);
  return review.pages.flatMap((page) => page.reviewed.words);
}

function kindOf(word: string, given = {}): string | undefined {
  return words(`${word}`, given)[0]?.kind;
}

describe('the kind of a running word', () => {
  it.each([
    ['tam', 'decodable'],
    ['TAM', 'decodable'],
    ['dot', 'decodable'],
    ['sat', 'decodable'],
    ['said', 'high-frequency'],
    ['Said', 'high-frequency'],
    ['the', 'high-frequency'],
    ['Mr.', 'high-frequency'],
    ['12', 'not-taught'],
    ['Dr.', 'not-taught'],
    ['night', 'not-taught'],
    ['mats', 'not-taught'],
    ['zat', 'not-taught'],
  ])('%s is %s', (word, kind) => {
    expect(kindOf(word)).toBe(kind);
  });

  it.each([
    ['night', '1', 'not-taught'],
    ['night', '5', 'decodable'],
    ['said', '1', 'not-taught'],
    ['said', '5', 'high-frequency'],
    ['mats', '4', 'decodable'],
  ])('%s at lesson %s is %s', (word, lesson, kind) => {
    expect(kindOf(word, { lesson })).toBe(kind);
  });

  const declared =
    'names: [Night, Tam, Mr. Zat]\nstory words:\n  night: when it is dark\n  mist: fog near the ground\n';
  it.each([
    ['Night', 'name'],
    ['Night’s', 'name'],
    ['night', 'story-word'],
    ['nights', 'story-word'],
    ['mist', 'story-word'],
    ['Zat', 'name'],
    // The first kind that holds: a name the children can sound out is one more decodable word.
    ['Tam', 'decodable'],
  ])('with declarations %s is %s', (word, kind) => {
    expect(kindOf(word, { frontMatter: declared })).toBe(kind);
  });

  it('takes any listed pronunciation of a word, but of a heteronym only the one its sentence asks for', () => {
    const heteronyms = {
      sensesOf: (word: string) =>
        word === 'read'
          ? [
              { use: 'present', gloss: 'now' },
              { use: 'past', gloss: 'then' },
            ]
          : undefined,
      choose: () => 1,
    };
    const late = sequence.replace('e as in ten', 'e as in ten, g as in rug, ai as in said, ea as in head');
    const kinds = reviewed('---\nlesson: "3"\n---\nagain read\n', late, {
      ...phonics,
      heteronyms,
    }).pages.flatMap((page) => page.reviewed.words.map(({ kind }) => kind));
    expect(kinds).toEqual(['decodable', 'not-taught']);
  });
});

describe('a word taught whole with an ending', () => {
  const endings = sequence.replace('high-frequency words: [said, sat]', 'high-frequency words: [said, mist]');

  it('is readable once the ending is open', () => {
    const early = reviewed('---\nlesson: "3"\n---\nmists\n', endings, phonics).pages[0]?.reviewed.words[0];
    expect(early).toMatchObject({ kind: 'not-taught', missing: [{ kind: 'ending', ending: 's' }] });
    const late = reviewed('---\nlesson: "4"\n---\nmists\n', endings, phonics).pages[0]?.reviewed.words[0];
    expect(late).toMatchObject({ kind: 'high-frequency', missing: [] });
  });
});

describe('what the review says of a word', () => {
  it('names what the likeliest reading lacks, and the lesson', () => {
    const [night] = words('night');
    expect(night?.missing).toMatchObject([
      { kind: 'spelling', letters: 'igh', keyWord: 'light', lesson: { name: '5' } },
    ]);
    expect(night?.reading?.parts.map(({ letters }) => letters)).toEqual(['n', 'igh', 't']);
  });

  it('has nothing missing for a name or story word', () => {
    expect(words('Night', { frontMatter: 'names: [Night]\n' })[0]?.missing).toEqual([]);
  });

  it.each([
    ['tam', false],
    ['dot', true],
    ['said', true],
    // Decodable from lesson 1, and taught as a whole in lesson 2.
    ['sat', true],
    ['the', false],
    ['night', false],
  ])('%s is new at lesson 2: %s', (word, isNew) => {
    expect(words(word)[0]?.isNew).toBe(isNew);
  });

  it('reads an author’s graphemes as the author’s reading', () => {
    const [zat] = words('zat', { frontMatter: 'pronunciations:\n  zat: z-a-t\n' });
    expect(zat?.reading?.source).toBe('author');
  });
});

describe('the figures of a story', () => {
  const story = `---
lesson: "2"
names: [Night]
story words:
  mist: fog near the ground
---
# The night

Tam sat. The mist sat. Said Night.

---

Dot night said.
`;
  const review = reviewed(story, sequence, phonics);

  it('counts running words by kind, the title apart', () => {
    expect(review.counts).toEqual({
      words: 10,
      decodable: 4,
      'high-frequency': 3,
      name: 1,
      'story-word': 1,
      'not-taught': 1,
    });
    expect(review.title.map(({ kind }) => kind)).toEqual(['high-frequency', 'not-taught']);
    expect(review.readable).toBe(0.7);
    expect(review.decodable).toBe(0.4);
  });

  it('places every use of the new words and spellings', () => {
    const shown = (spans: readonly { start: number; end: number }[]) =>
      spans.map(({ start, end }) => story.slice(start, end));
    expect(review.newWordUses.map(({ word, spans }) => [word, shown(spans)])).toEqual([
      ['said', ['Said', 'said']],
      ['sat', ['sat', 'sat']],
    ]);
    expect(
      review.newSpellingUses.map(({ spelling, spans }) => [spelling.line.letters, shown(spans)]),
    ).toEqual([
      ['d', ['Dot']],
      ['o', ['Dot']],
      ['r', []],
    ]);
    expect(review.practice).toBe(1);
  });

  it('sums up its pages', () => {
    expect(review.pages.map(({ reviewed: page }) => page.counts.words)).toEqual([7, 3]);
  });
});

describe('passing', () => {
  const only = (targets: string) =>
    `title: Examples\ntargets: { ${targets} }\nlessons:\n  - name: "1"\n    spellings: [m as in map, p as in map, a as in map, s as in sun, n as in sun, t as in top]\n`;
  const passes = (text: string, targets: string) =>
    reviewed(`---\nlesson: "1"\n---\n${text}\n`, only(targets), phonics).passes;

  it.each([
    ['a hard word within the target', 'Tam sat. Tam sat. Tam night.', 'readable: 80, practice: 0', true],
    ['under the target', 'Tam sat. Tam sat. Tam night.', 'readable: 90, practice: 0', false],
    ['another target missed', 'Tam sat. Tam sat.', 'readable: 80, practice: 0, sentence: 1', false],
  ])('%s: %s', (_, text, targets, expected) => {
    expect(passes(text, targets)).toBe(expected);
  });
});
