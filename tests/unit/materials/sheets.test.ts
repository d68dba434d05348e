import { describe, expect, test } from 'vitest';
import type { Material, PrintOrder } from '../../../server/src/materials/order.ts';
import { chainSteps, lettersNeeded } from '../../../server/src/materials/sheets/chain-steps.ts';
import { countOfSounds, soundBoxes } from '../../../server/src/materials/sheets/sound-boxes.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { chainOf, printed, type StoryWish, smallChain, storyToPrint } from '../../support/printed-story.ts';
import { type ReadNode, readPdf } from '../../support/read-pdf.ts';

const pages = [
  '> Picture walk: What is in the shed?\n\n![A red box in a shed](hill.svg)\nThe box was in a shed.\nA duck was in the box!',
  '![The duck naps]()\nThe duck had a nap of ten.\n\n> Ask: What is next?',
  'A well-fed duck is a fat duck, said the ox and the big red duck of the pond in the sun.',
  '> After reading: Was the duck sad?',
];
const frontMatter = 'names: [Kim]\nstory words:\n  pond: a small lake\n';

function sheet(material: Material, wish: StoryWish & Partial<PrintOrder> = {}, drafts = pages) {
  const pdf = readPdf(printed(material, [storyToPrint(drafts, { frontMatter, ...wish })], wish).bytes);
  const nodes = flat(pdf.structure);
  return { pdf, lines: nodes.map(({ text }) => text).filter((text) => text !== ''), nodes };
}

function flat(node: ReadNode): readonly ReadNode[] {
  return [node, ...node.children.flatMap(flat)];
}

describe('sound boxes', () => {
  test.each([
    ['box', 'b o x(2)'],
    ['cake', 'c a k e(0)'],
    ['cakes', 'c a k e(0) s'],
    ['Kate', 'K a t e(0)'],
    ['taste', 't a s t e(0)'],
    ['these', 'th e s e(0)'],
    ['knife', 'kn i f e(0)'],
    ['shed', 'sh e d'],
    ['duck', 'd u ck'],
    ['lamb', 'l a mb'],
    ['night', 'n igh t'],
  ])('of %s are %s', (word, boxes) => {
    const [reading] = packagePhonics.readingsOf(word);
    if (reading === undefined) throw new Error(word);
    const shown = soundBoxes(word, reading.parts).map(({ letters, sounds }) =>
      sounds === 1 ? letters : `${letters}(${sounds})`,
    );
    expect(shown.join(' ')).toBe(boxes);
    const sounds = reading.parts.flatMap((part) => part.sounds).length;
    expect(countOfSounds(soundBoxes(word, reading.parts))).toBe(sounds);
  });
});

describe('a chain', () => {
  test('is built by steps a teacher can say', () => {
    expect(chainSteps(smallChain).map(({ instruction }) => instruction)).toEqual([
      '',
      'Change a to i.',
      'Add s.',
      'Change n to t.',
      'Take away p.',
    ]);
  });

  test('needs exactly its graphemes as cards', () => {
    expect(lettersNeeded(smallChain)).toEqual(['a', 'i', 'n', 'p', 's', 't']);
    expect(lettersNeeded(chainOf('did', 'dish'))).toEqual(['d', 'd', 'i', 'sh']);
  });

  test('has two cards for a split grapheme, since others lie between them', () => {
    expect(lettersNeeded(chainOf('cap', 'cape', 'cope'))).toEqual(['a', 'c', 'e', 'o', 'p']);
  });
});

describe('the teacher’s copy', () => {
  const { pdf, lines, nodes } = sheet('teacher');

  test('is tagged to the last mark', () => {
    expect(pdf).toMatchObject({ title: 'The Red Box: teacher’s copy', isMarked: true, unclaimed: [] });
    expect(pdf.sides.every(({ untagged }) => untagged === 0)).toBe(true);
  });

  test('names the lesson, its spellings with key words, its words and the story words', () => {
    for (const text of [
      'Teacher’s copy. Lesson 2: x and sh, of Fern Lane',
      'x \nas in box, \nsh \nas in ship, \nck \nas in duck, \na_e \nas in cake',
      'box, shed, duck, ox',
      'was, of',
      'pond\n: a small lake',
      'Kim',
    ]) {
      expect(lines).toContain(text);
    }
  });

  test('counts the words up to the end of each line', () => {
    const counts = nodes.flatMap(({ text }, index) =>
      /^\d+$/.test(text) ? [`${text} ${nodes[index - 1]?.text.split('\n').at(-1)}`] : [],
    );
    expect(counts.slice(0, 3)).toEqual([
      '6 The box was in a shed.',
      '12 A duck was in the box!',
      '19 The duck had a nap of ten.',
    ]);
    const total = storyToPrint(pages, { frontMatter }).review.counts.words;
    expect(counts.at(-1)?.split(' ')[0]).toBe(String(total));
  });

  test('has the prompts and notes of each page where they stand', () => {
    const order = [
      'Picture walk: What is in the shed?',
      'Picture: A red box in a shed',
      'The box was in a shed.',
      'Picture: The duck naps',
      'The duck had a nap of ten.',
      'Ask: What is next?',
      'After reading: Was the duck sad?',
    ];
    const found = order.map((text) => lines.indexOf(text));
    expect(found).toEqual([...found].sort((one, other) => one - other));
    expect(found).not.toContain(-1);
  });

  test('has a chain, sound boxes, dictation', () => {
    expect(lines.join(' ').replaceAll('\n', '')).toContain(
      'Build pan. Change a to i: pin. Add s: spin. Change n to t: spit. Take away p: sit.',
    );
    expect(nodes.map(({ alternative }) => alternative)).toContain('box: 4 sounds, b, o, x');
    const dictated = lines.slice(
      lines.indexOf('Sentences to dictate') + 1,
      lines.indexOf('The figures of the text'),
    );
    expect(dictated).toEqual([
      'The box was in a shed.',
      'A duck was in the box!',
      'The duck had a nap of ten.',
    ]);
  });

  test('names what is not taught yet, and no story word that the text does not use', () => {
    const draft = sheet('teacher', { frontMatter }, ['The duck was in the night. It is 2.']);
    expect(draft.lines).toContain('night, 2');
    expect(draft.lines.join(' ')).not.toContain('a small lake');
    expect(sheet('cards', { frontMatter }, ['The duck was in the night.']).lines).not.toContain('pond');
  });

  test('dictates nothing that is marked, and no name', () => {
    const draft = sheet('teacher', { frontMatter }, [
      'The duck saw Kim.',
      'The duck was in the night.',
      'The duck was in the box and in the shed and in the sun.',
      'The duck was sad.',
    ]);
    const from = draft.lines.indexOf('Sentences to dictate') + 1;
    expect(draft.lines.slice(from, draft.lines.indexOf('The figures of the text'))).toEqual([
      'The duck was sad.',
    ]);
  });

  test('sets the e of a split spelling behind its boxes', () => {
    const { nodes: all } = sheet('teacher', {}, ['The cakes.']);
    expect(all.map(({ alternative }) => alternative)).toContain('cakes: 4 sounds, c, a, k, e, s');
  });

  test('has the figures of the review, and says what they are not', () => {
    const { counts } = storyToPrint(pages, { frontMatter }).review;
    expect(lines.some((line) => line.includes(`of ${counts.words} words; the target is 80 %`))).toBe(true);
    expect(lines.some((line) => line.replaceAll('\n', ' ').includes('They say nothing of a child'))).toBe(
      true,
    );
  });

  test('leaves out what the lesson does not have', () => {
    const { lines: other } = sheet('teacher', { lesson: '1', chain: [] });
    expect(other).not.toContain('Word building');
  });
});

describe('the practice pages', () => {
  const { lines, nodes, pdf } = sheet('practice');

  test('have a key with place and count of each word', () => {
    const key = lines.slice(lines.indexOf('Key for the teacher'));
    expect(key).toContain('2 times\n: line 1, word 3; line 2, word 3');
    const at = key.indexOf('of');
    expect(key[at + 1]).toBe('2 times\n: line 3, word 6; line 4, word 17');
  });

  test('have as many empty boxes as sounds', () => {
    const boxes = nodes.flatMap(({ alternative }) => (alternative?.includes('empty') ? [alternative] : []));
    expect(boxes).toEqual([
      '4 empty boxes for the sounds of box',
      '3 empty boxes for the sounds of shed',
      '3 empty boxes for the sounds of duck',
      '3 empty boxes for the sounds of ox',
    ]);
  });

  test('have a word for each new spelling in the boxes, though others come first', () => {
    const long =
      'The box, the fox, the ox, a fax, a mix, a tax, wax, an axe, a six. The duck. A cake. A shed.';
    const { nodes: all } = sheet('practice', {}, [long]);
    const boxed = all.flatMap(
      ({ alternative }) => /empty box.* of (\w+)$/.exec(alternative ?? '')?.[1] ?? [],
    );
    expect(boxed).toHaveLength(8);
    expect(boxed).toEqual(expect.arrayContaining(['duck', 'cake', 'shed']));
  });

  test('practise an ending, blend or number of syllables where the lesson opens one', () => {
    const opening = `title: Forms\ntargets: { readable: 0 }\nlessons:\n  - name: "1"\n    spellings: [r as in red, u as in run, n as in nap, t as in top, h as in hat, e as in red, s as in sun, d as in dog, m as in mud]\n    high-frequency words: [the]\n    syllables: 1\n  - name: "2"\n    syllables: 2\n`;
    const { nodes: all } = sheet('practice', { sequence: opening }, [
      'The sunset. The red hen ran. Then the sun set, the sunset!',
    ]);
    const boxed = all.flatMap(
      ({ alternative }) => /empty box.* of (\w+)$/.exec(alternative ?? '')?.[1] ?? [],
    );
    expect(boxed).toEqual(['sunset']);
  });

  test('tell the teacher what is left out, and what the children cannot read yet', () => {
    const { lines: all } = sheet('practice', { chain: [] }, ['The duck was in the night.']);
    const text = all.join(' ');
    expect(text).toContain('Left out Word chain: the story has no matter for it');
    expect(text).toContain('Not taught yet night');
  });

  test('have a chain with a blank for what is new in each word', () => {
    const chain = nodes.flatMap(({ alternative, text }) =>
      alternative?.startsWith('Word ') && text !== '' ? [text.replaceAll('\n', '')] : [],
    );
    expect(chain).toEqual(['pan', 'pn', 'pin', 'spi']);
  });

  test('have sentences that lack a word of the list above', () => {
    expect(lines).toContain('1\nThe \nbox \nwas \nin \na \n. ');
    expect(lines).toContain('2\nA \nduck \nwas \nin \nthe \n! ');
  });

  test('leave out a sentence that is the same but for the word that is missing', () => {
    const wish = { parts: new Set(['sentences'] as const) };
    const { lines: own } = sheet('practice', wish, ['It was a box. It was a shed. It was not a duck.']);
    expect(own.filter((line) => /^\d\n/.test(line))).toEqual([
      '1\nIt \nwas \na \n. ',
      '2\nIt \nwas \nnot \na \n. ',
    ]);
  });

  test.each([
    [['hunt'], ['Word hunt']],
    [
      ['boxes', 'sentences'],
      ['Sound boxes', 'Finish the sentences'],
    ],
    [['chain'], ['Word chain']],
  ] as const)('with %j alone', (parts, headings) => {
    const { nodes: own } = sheet('practice', { parts: new Set(parts) });
    const found = own.filter(({ type }) => type === 'H2').map(({ text }) => text);
    expect(found).toEqual([...headings, ...headings]);
  });

  test('say so when the story has no matter for them', () => {
    const { lines: none } = sheet('practice', { parts: new Set(['chain']), chain: [] });
    expect(none.join(' ')).toContain('nothing for the practice pages');
  });

  test('are tagged to the last mark', () => {
    expect(pdf.unclaimed).toEqual([]);
    expect(pdf.sides.every(({ untagged }) => untagged === 0)).toBe(true);
  });
});

describe('the cards', () => {
  const { lines } = sheet('cards');

  test('have the words of the lesson and the letters of the chain, and nothing else', () => {
    expect(lines).toEqual([
      ...['The Red Box', 'Word cards', 'was', 'of', 'box', 'shed', 'duck', 'ox', 'pond'],
      ...['Letter cards', 'a', 'i', 'n', 'p', 's', 't'],
    ]);
  });

  test('have no letter cards without a chain', () => {
    expect(sheet('cards', { chain: [] }).lines).not.toContain('Letter cards');
  });
});

test.each(['teacher', 'practice', 'cards'] as const)(
  '%s: nothing lies outside the paper’s margins of 36 points',
  (material) => {
    for (const { width, height, texts } of sheet(material).pdf.sides) {
      for (const { x, y, width: long } of texts) {
        expect(x).toBeGreaterThanOrEqual(36);
        expect(x + long).toBeLessThanOrEqual(width - 36);
        expect(y).toBeGreaterThanOrEqual(35.9);
        expect(y).toBeLessThanOrEqual(height - 36);
      }
    }
  },
);
