import { describe, expect, test } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { sitDown, uriOf } from '../support/writing-desk.ts';

const sequence = `${smallSequence}    endings: [ed]
  - name: "5"
    syllables: 2
    spellings: [h as in hop, o as in top, b as in bat, e as in bed, r as in red]
`;
const path = '/lane/a.md';

async function hoverOver(text: string, on: string, settings = {}) {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence }, settings });
  await desk.open(path, text);
  return unescaped(await desk.hoverText(path, on));
}

/** A markdown text as it is read. */
function unescaped(markdown: string): string {
  return markdown.replace(/\\([!-/:-@[-`{-~])/g, '$1');
}

describe('the hover', () => {
  test('on a word that can be sounded out shows its graphemes, sounds, key words and lessons', async () => {
    expect(await hoverOver(storyAt('2', 'The map sat.'), 'map')).toBe(
      [
        '**map** · can be sounded out at lesson 2',
        '',
        '| letters | sound | as in | lesson |',
        '| --- | --- | --- | --- |',
        '| m | /m/ | mud | 1 |',
        '| a | /ă/ | map | 1 |',
        '| p | /p/ | pan | 1 |',
        '',
        'The sounds are from the dictionary.',
      ].join('\n'),
    );
  });

  test('on a word that cannot be read says why, and from which lesson it will be', async () => {
    const text = await hoverOver(storyAt('2', 'The night.'), 'night');
    expect(text).toContain('**night** · cannot be read yet at lesson 2');
    expect(text).toContain('“night” needs igh as in light, which lesson 3 teaches.');
    expect(text).toContain('Readable from lesson 3.');
    expect(text).toContain('| igh | /ī/ | light | 3 (later) |');
  });

  test('says when no lesson will make a word readable', async () => {
    const text = await hoverOver(storyAt('2', 'The moon.'), 'moon');
    expect(text).toContain('No lesson of this sequence makes it readable.');
    expect(text).toContain('| oo | /o͞o/ |  | no lesson |');
  });

  test('shows the ending apart from its base word', async () => {
    const text = await hoverOver(storyAt('2', 'Nap hopped.'), 'hopped');
    expect(text).toContain('| ed | /t/ | ending ed | 4 (later) |');
    expect(text).toContain('| pp | /p/ | p as in pan | 1 |');
    expect(text).toContain('The sounds are from the dictionary: “hop” with the ending ed.');
    expect(text).toContain('Readable from lesson 5.');
  });

  test('shows syllables, the stressed one set off', async () => {
    expect(await hoverOver(storyAt('5', 'The monster.'), 'monster')).toMatch(/Syllables: mon·ster/);
  });

  test('shows the other readings', async () => {
    expect(await hoverOver(storyAt('5', 'Read it.'), 'Read')).toContain('Also read r-ea-d /rĕd/.');
  });

  test('writes sounds in the international alphabet where that is the setting', async () => {
    const text = await hoverOver(storyAt('2', 'The night.'), 'night', { sounds: 'ipa' });
    expect(text).toContain('| igh | /aɪ/ | light |');
  });

  test('follows a change of the setting', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, storyAt('2', 'The night.'));
    await desk.changeSettings({ sounds: 'ipa' });
    expect(await desk.hoverText(path, 'night')).toContain('aɪ');
  });

  test('says what a story word means, and nothing of it is markdown or HTML', async () => {
    const meaning = 'story words:\n  kit: "<img src=x> [a](b) *c* | ` &lt;"\n';
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, storyAt('2', 'The kit.', meaning));
    const text = await desk.hoverText(path, 'kit.');
    expect(text).toContain('kit\\: &lt;img src=x&gt; \\[a\\]\\(b\\) \\*c\\* \\| \\` &amp;lt;');
  });

  test('on the lesson says what it teaches', async () => {
    const text = await hoverOver(storyAt('3', 'The night.'), '3');
    expect(text).toContain('**Lesson 3** · long i');
    expect(text).toContain('**Spellings**: igh as in light');
  });

  test('on page breaks, white space and notes for the teacher says nothing', async () => {
    expect(await hoverOver(storyAt('2', 'The map.\n\n> Ask: night?'), 'night')).toBe('');
  });

  test.each([
    ['igh as in light', ['Teaches igh that says /ī/.', 'light is l-igh-t, /līt/']],
    ['the]', ['**the** · taught as a whole word']],
    ['3"', ['**Lesson 3** · long i']],
  ])('in the sequence on %s', async (on, texts) => {
    const desk = await sitDown();
    await desk.open('/lane/sequence.yaml', sequence);
    const hover = unescaped(await desk.hoverText('/lane/sequence.yaml', on));
    for (const text of texts) expect(hover).toContain(text);
  });
});

describe('the outline', () => {
  test('of a story has its title, its pages with the notes for the illustrator, and their sentences', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    const body = '# The Map\n\n![A map on a mat](art/map.png)\nThe map sat. Nap!\n\n---\n\nTap it.';
    await desk.open(path, storyAt('2', body));
    const drawn = (await desk.outline(path)).map(({ name, detail, children }) => [
      name,
      detail,
      children?.map((child) => child.name),
    ]);
    expect(drawn).toEqual([
      ['The Map', undefined, undefined],
      ['Page 1', 'A map on a mat', ['The map sat.', 'Nap!']],
      ['Page 2', undefined, ['Tap it.']],
    ]);
  });

  test('of a sequence has its lessons and what they teach', async () => {
    const desk = await sitDown();
    await desk.open('/lane/sequence.yaml', sequence);
    const outline = await desk.outline('/lane/sequence.yaml');
    expect(outline.map(({ name }) => name)).toEqual([
      'Lesson 1',
      'Lesson 2',
      'Lesson 3',
      'Lesson 4',
      'Lesson 5',
    ]);
    expect(outline[2]).toMatchObject({ detail: 'long i', children: [{ name: 'igh as in light' }] });
  });

  test('keeps every selection inside its range', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, storyAt('2', '# A\n\nMap.\n\n---\n\n---\n\n![](x.png)\n\n---\nNap.'));
    await desk.open('/lane/sequence.yaml', sequence);
    for (const file of [path, '/lane/sequence.yaml']) {
      for (const { range, selectionRange } of await desk.outline(file)) {
        const place = ({ line, character }: { line: number; character: number }) => line * 1000 + character;
        expect(place(range.start)).toBeLessThanOrEqual(place(selectionRange.start));
        expect(place(range.end)).toBeGreaterThanOrEqual(place(selectionRange.end));
      }
    }
  });
});

describe('the way to the lesson', () => {
  const targets = async (text: string, on: string) => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, text);
    return (await desk.definition(path, on)).map(({ targetUri, targetSelectionRange: { start } }) => [
      targetUri,
      sequence.split('\n')[start.line]?.slice(start.character),
    ]);
  };

  test.each([
    ['the lesson of the front matter', storyAt('3', 'Night.'), '3', ['"3"']],
    ['a word that lacks a spelling', storyAt('2', 'The night.'), 'night', ['"3"']],
    ['a word that lacks several things', storyAt('2', 'Nap hopped.'), 'hopped', ['"5"', '"4"']],
    ['a word that can be read', storyAt('2', 'The map.'), 'map', []],
  ])('leads from %s', async (_, text, on, lessons) => {
    expect(await targets(text, on)).toEqual(lessons.map((lesson) => [uriOf('/lane/sequence.yaml'), lesson]));
  });

  test('leads from the name of a sequence to its file', async () => {
    const desk = await sitDown({ files: { '/lane/plan.yaml': sequence } });
    await desk.open(path, storyAt('2', 'Nap.', 'sequence: plan.yaml\n'));
    expect(await desk.definition(path, 'plan')).toMatchObject([{ targetUri: uriOf('/lane/plan.yaml') }]);
  });
});

describe('the gauge', () => {
  test('carries what the client shows', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, storyAt('3', '# The Map\n\nThe night map. The moon.\n\n---\n\nNight.'));
    const params = desk.lastGauge(path);
    if (params === undefined || !('gauge' in params)) throw new Error('There is no gauge.');
    const { gauge } = params;
    expect(gauge).toMatchObject({
      uri: uriOf(path),
      version: 1,
      title: 'The Map',
      lesson: { name: '3', title: 'long i', sequenceUri: uriOf('/lane/sequence.yaml') },
      counts: { words: 6, decodable: 3, 'high-frequency': 2, 'not-taught': 1 },
      practice: { words: 2, atLeast: 0 },
    });
    expect(gauge.readable).toBeCloseTo(5 / 6);
    expect(gauge.notTaught).toEqual([
      {
        word: 'moon',
        why: '“moon” needs oo as it sounds here, which no lesson teaches.',
        ranges: [{ start: { line: 5, character: 19 }, end: { line: 5, character: 23 } }],
      },
    ]);
    expect(gauge.newSpellings).toMatchObject([{ letters: 'igh', keyWord: 'light', ranges: [{}, {}] }]);
    expect(gauge.sentences.each.map(({ words }) => words)).toEqual([3, 2, 1]);
    expect(gauge.pages.each.map(({ number, words }) => [number, words])).toEqual([
      [1, 5],
      [2, 1],
    ]);
  });

  test('of a long story follows at most once a second', async () => {
    const desk = await sitDown({
      files: { '/lane/sequence.yaml': sequence },
      settings: { largestFile: 5000 },
    });
    await desk.open(path, storyAt('2', 'The map sat.\n\n---\n\n'.repeat(2000)));
    const before = desk.gauges.length;
    for (let round = 0; round < 5; round++) await desk.edit(path, 'The map', 'The nap map');
    expect(desk.gauges).toHaveLength(before);
    await desk.clock.pass(1000);
    expect(desk.gauges).toHaveLength(before + 1);
    expect(desk.gauges.at(-1)).toMatchObject({ version: 6 });
  });
});
