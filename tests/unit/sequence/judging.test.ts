import { describe, expect, it, test } from 'vitest';
import { classroom } from '../../support/at-lesson.ts';
import { beginnersWords, handPhonics } from '../../support/hand-phonics.ts';

const phonics = handPhonics(beginnersWords);

/** The letters with their plain sounds, without any form. */
const letters =
  '[m as in mud, s as in sun, t as in top, a as in map, p as in pan, n as in nap, i as in sit, d as in mud, u as in mud, o as in top, e as in bed, r as in red, b as in bat, c as in cat, h as in hat, k as in kit, l as in leg, g as in leg, f as in fast, x as in box, qu as in quit, v as in seven, z as in zib, j as in jump, bb as in rabbit, tt as in kitten]';

describe('spellings', () => {
  const room = classroom(
    `
lessons:
  - name: "1"
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan]
  - name: "2"
    spellings: [n as in nap, i as in sit, h as in hat, ss as in hiss]
  - name: "3"
    spellings: [th as in thin, o as in top, d as in dog, g as in dog]
  - name: "4"
    spellings: [oo as in moon, s as in his, k as in kit]
  - name: "5"
    spellings: [oo as in book, th as in that, b as in bat]
  - name: "6"
    spellings: [igh as in light, y as in my]
  - name: "7"
    spellings: [a_e as in cake, x as in box, qu as in quit]
`,
    phonics,
  );

  test.each([
    ['sat', '1', []],
    ['sit', '1', ['spelling i as in sit (2)']],
    ['sit', '2', []],
    ['sun', '1', ['spelling u', 'spelling n as in nap (2)']],
    ['his', '2', ['spelling s as in his (4)']],
    ['his', '4', []],
    ['hiss', '2', []],
    ['thin', '3', []],
    ['that', '3', ['spelling th as in that (5)']],
    ['that', '5', []],
    ['soon', '4', []],
    ['took', '4', ['spelling oo as in book (5)']],
    ['took', '5', []],
    ['dog', '3', []],
    ['night', '5', ['spelling igh as in light (6)']],
    ['night', '6', []],
    ['make', '6', ['spelling a_e as in cake (7)']],
    ['make', '7', []],
    ['box', '6', ['spelling x as in box (7)']],
    ['box', '7', []],
    ['quit', '7', []],
    ['said', '7', ['spelling ai']],
    ['rain', '7', ['spelling r', 'spelling ai as in rain']],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('says by which spellings a word is read, in the order of the word', () => {
    room.atLesson('4').word('his').uses('h as in hat', 'i as in sit', 's as in his');
  });

  it('names a spelling that is missing twice only once', () => {
    const little = classroom(
      'lessons: [{name: "1", spellings: [t as in top]}, {name: "2", spellings: [p as in pan]}]',
      phonics,
    );
    const papa = handPhonics('pap p=P a=AE1 p=P');
    const verdict = little.atLesson('1').taught.judge(papa.readingsOf('pap')[0] ?? expect.fail());
    expect(verdict.missing.map((missing) => missing.kind === 'spelling' && missing.letters)).toEqual([
      'p',
      'a',
    ]);
  });
});

describe('chunks', () => {
  const room = classroom(
    `
lessons:
  - name: "1"
    spellings: [b as in bat, t as in top, p as in pan, h as in hat, a as in map, i as in sit]
  - name: "2"
    spellings: [all as in ball]
  - name: "3"
    spellings: [ll as in hill, nk as in pink]
  - name: "4"
    spellings: [ing as in king, r as in red]
  - name: "5"
    spellings: [ng as in ring, k as in kit]
  - name: "6"
    spellings: [ake as in cake, m as in mud]
`,
    phonics,
  );

  test.each([
    ['ball', '1', ['spelling all as in ball (2)']],
    ['ball', '2', []],
    ['tall', '2', []],
    // The chunk does not license its own ll.
    ['hill', '2', ['spelling ll as in hill (3)']],
    ['hill', '3', []],
    ['pink', '2', ['spelling nk as in pink (3)']],
    ['pink', '3', []],
    ['tank', '3', []],
    // The k of nk is not a taught k.
    ['king', '4', ['spelling k as in kit (5)']],
    ['ring', '4', []],
    ['king', '5', []],
    ['bake', '5', ['spelling ake as in cake (6)']],
    ['bake', '6', []],
    ['tame', '6', ['spelling a_e']],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('reads by the chunk where both the chunk and its graphemes are taught', () => {
    room.atLesson('5').word('ring').uses('r as in red', 'ing as in king');
  });
});

describe('endings', () => {
  const plain = `
lessons:
  - name: "1"
    spellings: ${letters}
  - name: "2"
    endings: [s]
  - name: "3"
    endings: [ing, ed]
    spellings: [a_e as in cake, y as in my]
  - name: "4"
    endings: [es, "'s", un]
    spellings: [ck as in lock]
`;
  const room = classroom(plain, phonics);

  test.each([
    ['cat', '1', []],
    ['cats', '1', ['ending s (2)']],
    ['cats', '2', []],
    // The ending s brings both its sounds, though `s as in his` is nowhere taught.
    ['dogs', '2', []],
    ['his', '4', ['spelling s']],
    ['jumping', '2', ['ending ing (3)']],
    ['jumping', '3', []],
    ['jumped', '3', []],
    // Doubling, a dropped e and y changed to i come with the ending.
    ['hopped', '3', []],
    ['baking', '2', ['spelling a_e as in cake (3)', 'ending ing (3)']],
    ['baking', '3', []],
    ['cried', '2', ['spelling y as in my (3)', 'ending ed (3)']],
    ['cried', '3', []],
    ['boxes', '3', ['ending es (4)']],
    ['boxes', '4', []],
    ["dog's", '3', ["ending 's (4)"]],
    ["dog's", '4', []],
    ['unlock', '3', ['spelling ck as in lock (4)', 'ending un (4)']],
    ['unlock', '4', []],
    ['jumpers', '2', ['ending er']],
    ['jumpers', '1', ['ending s (2)', 'ending er']],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('points at the letters of the word itself, not of its base', () => {
    const reading = phonics.readingsOf('baking')[0] ?? expect.fail();
    const [first] = room.atLesson('2').taught.judge(reading).missing;
    expect(first).toMatchObject({
      kind: 'spelling',
      letters: 'a_e',
      part: { letters: 'a', spans: [[1, 2]] },
    });
  });

  it('counts the spellings of the base as used, and those that the ending practises', () => {
    room.atLesson('3').word('baking').uses('b as in bat', 'a_e as in cake', 'k as in kit', 'i as in sit');
    room.atLesson('2').word('cats').uses('c as in cat', 'a as in map', 't as in top', 's as in sun');
    room.atLesson('2').word('dogs').uses('d as in mud', 'o as in top', 'g as in leg');
  });

  it('counts an ending that is taught as a spelling', () => {
    const taught = classroom(
      `lessons: [{name: "1", spellings: ${letters}, endings: [ed, ing]}, {name: "2", spellings: [ed as in jumped, ing as in jumping]}]`,
      phonics,
    ).atLesson('2');
    taught.word('hopped').uses('h as in hat', 'o as in top', 'p as in pan', 'ed as in jumped');
    taught
      .word('jumping')
      .uses('j as in jump', 'u as in mud', 'm as in mud', 'p as in pan', 'ing as in jumping');
  });

  it('asks for no ending where no lesson mentions endings, and still for the spellings of the base', () => {
    const free = classroom(`lessons: [{name: "1", spellings: ${letters}}]`, phonics).atLesson('1');
    free.word('jumping').isDecodable();
    free.word('hopped').isDecodable();
    free.word('baking').lacks('spelling a_e');
  });

  it('is closed throughout by a list with nothing in it', () => {
    const closed = classroom(`lessons: [{name: "1", spellings: ${letters}, endings: []}]`, phonics);
    closed.atLesson('1').word('cats').lacks('ending s');
  });
});

describe('blends', () => {
  const room = classroom(
    `
lessons:
  - name: "1"
    spellings: ${letters}
  - name: "2"
    spellings: [ng as in ring, ch as in lunch, er as in her]
    blends: [end]
  - name: "3"
    blends: [start]
    endings: [ing, er]
  - name: "4"
    spellings: [nk as in pink]
  - name: "5"
    blends: [three]
`,
    phonics,
  );

  test.each([
    ['top', '1', []],
    ['stop', '2', ['blend start st (3)']],
    ['stop', '3', []],
    ['hand', '1', ['blend end nd (2)']],
    ['hand', '2', []],
    ['lunch', '1', ['spelling ch as in lunch (2)', 'blend end nch (2)']],
    ['lunch', '2', []],
    ['ring', '2', []],
    ['strap', '3', ['blend three str (5)']],
    ['strap', '5', []],
    // x and qu are one grapheme of two sounds, no blend.
    ['box', '1', []],
    ['quit', '1', []],
    ['next', '1', ['blend end xt (2)']],
    ['quilt', '1', ['blend end lt (2)']],
    // Consonants that a syllable border parts do not blend.
    ['sunset', '1', []],
    ['rabbit', '1', []],
    ['monster', '2', ['blend start st (3)']],
    // The ending's own consonants are free.
    ['jumping', '3', []],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('is no blend what one taught chunk reads', () => {
    const chunk = classroom(
      `
lessons:
  - name: "1"
    spellings: [p as in pan, i as in sit, t as in top, a as in map, nk as in pink, n as in nap, d as in mud, h as in hat]
    blends: []
`,
      phonics,
    ).atLesson('1');
    chunk.word('pink').isDecodable();
    chunk.word('tank').isDecodable();
    chunk.word('hand').lacks('blend end nd');
  });

  it('is not asked for where no lesson mentions blends', () => {
    classroom(`lessons: [{name: "1", spellings: ${letters}}]`, phonics)
      .atLesson('1')
      .word('strap')
      .isDecodable();
  });
});

describe('syllables', () => {
  const room = classroom(
    `
lessons:
  - name: "1"
    spellings: ${letters}
    endings: [s, ing]
  - name: "2"
    syllables: 2
`,
    phonics,
  );

  test.each([
    ['sunset', '1', ['syllables 2 (2)']],
    ['sunset', '2', []],
    ['rabbits', '1', ['syllables 2 (2)']],
    ['rabbits', '2', []],
    // One syllable plus an ending.
    ['jumping', '1', []],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('are not asked for where no lesson mentions them', () => {
    classroom(`lessons: [{name: "1", spellings: ${letters}}]`, phonics)
      .atLesson('1')
      .word('sunset')
      .isDecodable();
  });
});

describe('reduced vowels', () => {
  const room = classroom(
    `
lessons:
  - name: "1"
    spellings: [r as in red, a as in map, bb as in rabbit, t as in top, n as in nap, k as in kit, tt as in kitten, p as in pan, g as in leg, s as in sun, l as in leg]
  - name: "2"
    spellings: [i as in sit]
  - name: "3"
    spellings: [e as in bed, o as in open]
    syllables: 2
  - name: "4"
    spellings: [t as in listen, e as in seven]
`,
    phonics,
  );

  test.each([
    ['rabbit', '1', ['spelling i as in sit (2)', 'syllables 2 (3)']],
    ['rabbit', '2', ['syllables 2 (3)']],
    ['rabbit', '3', []],
    ['kitten', '2', ['spelling e as in bed (3)', 'syllables 2 (3)']],
    ['kitten', '3', []],
    ['open', '3', []],
    ['ago', '3', []],
    // A silent letter that stands alone is taught by a key word like any other spelling.
    ['listen', '3', ['spelling t as in listen (4)']],
    ['listen', '4', []],
  ] as const)('%s at lesson %s lacks %j', (word, lesson, missing) => {
    room
      .atLesson(lesson)
      .word(word)
      .lacks(...missing);
  });

  it('asks for the plain short sound, with its key word, where no lesson teaches it', () => {
    const none = classroom(
      'lessons: [{name: "1", spellings: [r as in red, a as in map, bb as in rabbit, t as in top]}]',
      phonics,
    );
    none.atLesson('1').word('rabbit').lacks('spelling i as in sit');
  });

  describe('beside a spelling of the very sound', () => {
    const words = handPhonics(`${beginnersWords}
month m=M o=AH1 n=N th=TH
wagon w=W a=AE1 g=G o=AH0 n=N / wag-on
lemon l=L e=EH1 m=M o=AH0 n=N / lem-on`);
    const common =
      'a as in map, g as in leg, n as in nap, l as in leg, e as in bed, m as in mud, w as in wagon';
    const taught = (spellings: string) =>
      classroom(`lessons: [{name: "1", spellings: [${common}, ${spellings}]}]`, words)
        .atLesson('1')
        .word('lemon');
    const read = ['l as in leg', 'e as in bed', 'm as in mud'];

    it('practises the plain short sound, not the stressed one that it is merely like', () => {
      taught('o as in top, o as in month').uses(...read, 'o as in top', 'n as in nap');
    });

    it('practises the weak sound where a key word with a weak vowel teaches it', () => {
      taught('o as in top, o as in wagon').uses(...read, 'o as in wagon', 'n as in nap');
    });

    it('is read by the stressed one where that alone is taught', () => {
      taught('o as in month').uses(...read, 'o as in month', 'n as in nap');
    });
  });

  it('takes the long sound only at the end of a syllable', () => {
    const long = classroom(
      'lessons: [{name: "1", spellings: [k as in kit, i as in sit, tt as in kitten, n as in nap, e as in me, o as in open, p as in open, g as in leg, a as in baby]}]',
      handPhonics(`${beginnersWords}\nme m=M e=IY1\nbaby b=B a=EY1 b=B y=IY0 / ba-by`),
    );
    long.atLesson('1').word('kitten').lacks('spelling e');
    long.atLesson('1').word('ago').isDecodable();
  });

  it('is no way to read a stressed or a one-syllable word', () => {
    const was = handPhonics(`${beginnersWords}\nwas w=W a=AH1 s=Z`);
    classroom('lessons: [{name: "1", spellings: [a as in map, s as in his]}]', was)
      .atLesson('1')
      .word('was')
      .lacks('spelling w', 'spelling a');
  });
});
