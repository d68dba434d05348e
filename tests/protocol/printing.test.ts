import { describe, expect, test } from 'vitest';
import {
  type NoAnswer,
  type PreviewAnswer,
  type PreviewParams,
  type PrintAnswer,
  type PrintCollectionParams,
  type PrintParams,
  previewRequest,
  printCollectionRequest,
  printRequest,
  type ReadPicturesParams,
  type ReadPicturesResult,
} from '../../server/src/editor/workshop/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { hillPicture, printSequence } from '../support/printed-story.ts';
import { type ReadNode, readPdf } from '../support/read-pdf.ts';
import { smallPng } from '../support/small-png.ts';
import { type Desk, sitDown, uriOf } from '../support/writing-desk.ts';

const story = '/lane/box.md';
const text = `---
title: The Red Box
lesson: "2"
---
# The Red Box

![A red box](art/box.svg)
The red box is in the shed.

---

A duck sat on it.
`;

const wish: PrintParams = {
  uri: uriOf(story),
  material: 'book',
  layout: 'page',
  paper: 'letter',
  parts: ['hunt', 'boxes', 'chain', 'sentences'],
};

/** A client with one drawing on its disk, whose stamp is given; it notes what it was asked for. */
function disk(content: string | Uint8Array = hillPicture) {
  const asked: ReadPicturesParams[] = [];
  const state = { stamp: '1', content };
  const pictures = (params: ReadPicturesParams): ReadPicturesResult => {
    asked.push(params);
    return params.addresses.map((address, index) => {
      if (address !== 'art/box.svg') return { trouble: 'is not there or cannot be read' };
      if (params.stamps?.[index] === state.stamp) return { isUnchanged: true };
      return { base64: Buffer.from(state.content).toString('base64'), stamp: state.stamp };
    });
  };
  return { asked, state, pictures };
}

async function sit(drive = disk(), written = text): Promise<Desk> {
  const files = { '/lane/sequence.yaml': printSequence };
  const desk = await sitDown({ phonics: packagePhonics, files, prints: true, pictures: drive.pictures });
  await desk.open(story, written);
  return desk;
}

const print = (desk: Desk, given: object = {}): Promise<PrintAnswer & NoAnswer> =>
  desk.connection.sendRequest(printRequest, { ...wish, ...given });

const preview = (desk: Desk, given: Partial<PreviewParams> = {}): Promise<PreviewAnswer & NoAnswer> =>
  desk.connection.sendRequest(previewRequest, { ...wish, known: [], ...given });

const wordsOf = (node: ReadNode): string =>
  [node.text, ...node.children.map(wordsOf)].filter((part) => part !== '').join(' ');

/** All that is read on the pages. */
const textOfSides = (answer: PreviewAnswer): string =>
  answer.document.sides.flatMap(({ reading }) => reading).join(' ');

describe('printing', () => {
  test.each([
    ['book', 'page', 'letter', [612, 792], 3, /The red box is in the shed\. A duck sat on it\./],
    ['book', 'page', 'a4', [595.276, 841.89], 3, /The red box is in the shed\. A duck sat on it\./],
    ['book', 'booklet', 'letter', [792, 612], 2, /The red box is in the shed\. A duck sat on it\./],
    ['teacher', 'page', 'letter', [612, 792], undefined, /Teacher’s copy\. Lesson 2/],
    ['practice', 'page', 'letter', [612, 792], undefined, /Key for the teacher/],
    ['cards', 'page', 'a4', [595.276, 841.89], undefined, /Word cards was of .*Letter cards/],
  ] as const)('%s, %s, %s', async (material, layout, paper, [width, height], sides, expected) => {
    const answer = await print(await sit(), { material, layout, paper });
    expect(answer.message).toBeUndefined();
    const pdf = readPdf(Buffer.from(answer.pdf, 'base64'));
    expect(pdf.sides).toHaveLength(answer.sides);
    if (sides !== undefined) expect(answer.sides).toBe(sides);
    for (const side of pdf.sides) expect([side.width, side.height]).toEqual([width, height]);
    expect(wordsOf(pdf.structure)).toMatch(expected);
  });

  test('the same story gives the same bytes', async () => {
    const desk = await sit();
    expect((await print(desk)).pdf).toBe((await print(desk)).pdf);
  });

  test('prints the text as it stands in the editor, not as it was opened', async () => {
    const desk = await sit();
    await desk.edit(story, 'A duck sat on it.', 'A cat sat on it.');
    expect(wordsOf(readPdf(Buffer.from((await print(desk)).pdf, 'base64')).structure)).toContain('A cat sat');
  });

  test('prints only the practice pages that are asked for', async () => {
    const answer = await print(await sit(), { material: 'practice', parts: ['hunt'] });
    const said = wordsOf(readPdf(Buffer.from(answer.pdf, 'base64')).structure);
    expect(said).toContain('Word hunt');
    expect(said).not.toContain('Sound boxes');
  });

  test.each([
    [
      'a picture that is not there',
      text.replace('art/box.svg', 'art/no.svg'),
      /^Line 7: The picture “art\/no.svg” is not there/,
    ],
    [
      'letters that the face lacks',
      text.replace('A duck', 'A 鸭 duck'),
      /^Line 12: .*has no “鸭” \(U\+9E2D\)/,
    ],
    ['front matter that is wrong', text.replace('"2"', '"nine"'), /nine/],
    ['a file that is no story', '# Notes\n\nThe red box.\n', /has no lesson in its front matter/],
  ])('%s: no document, and why', async (_, written, message) => {
    const answer = await print(await sit(disk(), written));
    expect(answer.message).toMatch(message);
    expect(answer.pdf).toBeUndefined();
  });

  test.each([
    [{ material: 'poster' }, 'The material has to be one of book, teacher, practice, cards.'],
    [{ layout: 'scroll' }, 'The layout has to be one of page, booklet.'],
    [{ paper: 'a3' }, 'The paper has to be one of letter, a4.'],
    [{ parts: 'all' }, 'The parts have to be a list.'],
    [
      { uri: uriOf('/lane/none.md') },
      'Open a story first: a markdown file that names its lesson at the top.',
    ],
  ])('%j is answered with a sentence, in print and in preview', async (given, message) => {
    const desk = await sit();
    expect(await print(desk, given)).toEqual({ message });
    expect(await preview(desk, given as Partial<PreviewParams>)).toEqual({ message });
  });

  test('a broken picture is named', async () => {
    const broken = disk(
      smallPng({ width: 30, height: 20, colour: 2, sample: (x, y) => 9 * x + y }).subarray(0, 60),
    );
    expect((await print(await sit(broken))).message).toMatch(/“art\/box.svg” (is broken|breaks off)/);
  });

  test('reads pictures afresh, whatever a preview has kept', async () => {
    const drive = disk();
    const desk = await sit(drive);
    await preview(desk);
    await print(desk);
    expect(drive.asked.map(({ stamps }) => stamps)).toEqual([[null], [null]]);
  });

  test('a server without the code for it says so', async () => {
    const files = { '/lane/sequence.yaml': printSequence };
    const desk = await sitDown({ phonics: packagePhonics, files });
    await desk.open(story, text);
    const message = 'Nothing can be printed here.';
    expect(await print(desk)).toEqual({ message });
    expect(await preview(desk)).toEqual({ message });
  });
});

describe('a collection', () => {
  const lane = '/lane/a-duck.md';
  const duck = text.replaceAll('The Red Box', 'A Duck').replace('![A red box](art/box.svg)\n', '');
  const files = { '/lane/sequence.yaml': printSequence, [story]: text, [lane]: duck };
  const uris = [uriOf(lane), uriOf(story)];

  const sitWith = (changed: Readonly<Record<string, string>> = {}): Promise<Desk> =>
    sitDown({
      phonics: packagePhonics,
      files: { ...files, ...changed },
      prints: true,
      listsFiles: true,
      pictures: disk().pictures,
    });

  const collect = (desk: Desk, given: object = {}): Promise<PrintAnswer & NoAnswer> => {
    const params: PrintCollectionParams = { uris, layout: 'page', paper: 'a4' };
    return desk.connection.sendRequest(printCollectionRequest, { ...params, ...given });
  };

  test('has a cover, contents and the stories, open or not, in the order that is asked for', async () => {
    const desk = await sitWith();
    const answer = await collect(desk);
    expect(answer.message).toBeUndefined();
    const said = wordsOf(readPdf(Buffer.from(answer.pdf, 'base64')).structure);
    expect(said.replaceAll('\n', ' ')).toMatch(
      /Contents.*A Duck.*The Red Box.*A duck sat on it\..*A duck sat on it\./,
    );
    const turned = await collect(desk, { uris: [...uris].reverse() });
    const other = wordsOf(readPdf(Buffer.from(turned.pdf, 'base64')).structure);
    expect(other.replaceAll('\n', ' ')).toMatch(/Contents.*The Red Box.*A Duck/);
  });

  test('takes the text of the editor where a story is open', async () => {
    const desk = await sitWith();
    await desk.open(story, text);
    await desk.edit(story, 'A duck sat on it.', 'A cat sat on it.');
    const said = wordsOf(readPdf(Buffer.from((await collect(desk)).pdf, 'base64')).structure);
    expect(said).toContain('A cat sat on it.');
  });

  test('names the story and the line of what cannot be printed', async () => {
    const desk = await sitWith({ [lane]: duck.replace('A duck', 'A 鸭 duck') });
    const answer = await collect(desk);
    expect(answer.pdf).toBeUndefined();
    expect(answer.message).toMatch(/^a-duck\.md, line 11: .*has no “鸭”.* Nothing was written\.$/);
  });

  test.each([
    [{ uris: [] }, 'A collection wants at least one story.'],
    [{ uris: 'all' }, 'A collection wants at least one story.'],
    [{ uris: [uriOf('/lane/none.md')] }, 'none.md is no story with a lesson.'],
    [{ layout: 'scroll' }, 'The layout has to be one of page, booklet.'],
    [{ paper: 'a3' }, 'The paper has to be one of letter, a4.'],
  ])('%j is answered with a sentence', async (given, message) => {
    expect(await collect(await sitWith(), given)).toEqual({ message });
  });

  test('a server without the code for it says so', async () => {
    const desk = await sitDown({ phonics: packagePhonics, files, listsFiles: true });
    expect(await collect(desk)).toEqual({ message: 'Nothing can be printed here.' });
  });
});

describe('the preview', () => {
  test.each(['book', 'teacher', 'practice', 'cards'] as const)(
    'has as many pages as the print: %s',
    async (material) => {
      const desk = await sit();
      const { document } = await preview(desk, { material });
      expect(document.sides).toHaveLength((await print(desk, { material })).sides);
    },
  );

  test('follows the text, and says which lesson the book needs', async () => {
    const desk = await sit();
    expect(textOfSides(await preview(desk))).toMatch(/Lesson 2.*A duck sat on it\./);
    await desk.edit(story, 'A duck', 'The duck');
    expect(textOfSides(await preview(desk))).toMatch(/The duck sat on it\./);
  });

  test('shows a draft with problems, and names them by line', async () => {
    const desk = await sit(disk(), text.replace('art/box.svg', '../../box.svg'));
    const { document, problems } = await preview(desk);
    expect(document.sides).toHaveLength(3);
    expect(problems).toEqual([
      { line: 7, message: 'The picture “../../box.svg” is not there or cannot be read.' },
    ]);
    expect(textOfSides({ document, problems, pictures: [] })).toContain(
      'An empty frame for a drawing: A red box',
    );
  });

  test('sends the data of a picture once, and again when the file has changed', async () => {
    const drive = disk();
    const desk = await sit(drive);
    const [first] = (await preview(desk)).pictures;
    expect(first?.data?.type).toBe('image/svg+xml');
    const known = [first?.key ?? ''];
    expect((await preview(desk, { known })).pictures).toEqual([{ address: 'art/box.svg', key: known[0] }]);
    expect(drive.asked.at(-1)?.stamps).toEqual(['1']);
    drive.state.stamp = '2';
    const [changed] = (await preview(desk, { known })).pictures;
    expect(changed?.key).not.toBe(known[0]);
    expect(changed?.data).toBeDefined();
  });

  test('hands out a drawing as paths alone', async () => {
    const scripted = hillPicture.replace(
      '<rect',
      '<desc>hush</desc><title>hush</title><rect onload="hush()"',
    );
    const [picture] = (await preview(await sit(disk(scripted)))).pictures;
    const svg = Buffer.from(picture?.data?.base64 ?? '', 'base64').toString();
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" /);
    expect(svg.match(/<path /g)?.length).toBe(3);
    expect(svg).not.toContain('hush');
  });
});
