import { describe, expect, it } from 'vitest';
import type { Fit } from '../../../server/src/fit/fit.ts';
import { fitText } from '../../../server/src/fit/fit-text.ts';
import { missingLabel } from '../../../server/src/review/wording.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { pondPhonics, pondSequence } from '../../support/pond-phonics.ts';

function fit(text: string, sequence = pondSequence): Fit {
  return fitText(readStory(text), teachingOf(readSequence(sequence), pondPhonics), pondPhonics);
}

describe('a text at every lesson', () => {
  it.each([
    // Lesson 1 reads map, sat, net, the; lesson 2 mud and top; lesson 3 night. The target is 75 %.
    ['The map. The net.', [1, 1, 1], '1'],
    ['The top. The mud.', [0.5, 1, 1], '2'],
    ['The night night.', [1 / 3, 1 / 3, 1], '3'],
    ['The cake, the cake.', [0.5, 0.5, 0.5], undefined],
    ['', [1, 1, 1], '1'],
  ])('%s', (text, shares, first) => {
    const { lessons, first: found } = fit(text);
    expect(lessons.map(({ readable }) => readable)).toEqual(shares);
    expect(found?.lesson.name).toBe(first);
  });

  it('counts running words, and different ones whatever their capitals', () => {
    expect(fit('The map. A map, the Map!')).toMatchObject({ words: 6, differentWords: 3 });
  });

  it('does not count the title', () => {
    expect(fit('# The night\n\nThe map.').words).toBe(2);
  });

  it('takes the names and story words of a front matter into account', () => {
    const text = '---\nlesson: "1"\nnames: [Kim]\n---\nKim sat.';
    expect(fit(text).lessons[0]?.counts).toMatchObject({ words: 2, name: 1, decodable: 1, 'not-taught': 0 });
  });

  it('tells from which lesson on it reaches every target, where a later one is higher', () => {
    const rising = pondSequence.replace('"2"\n', '"2"\n    targets: { readable: 90 }\n');
    const { first, lasting } = fit('The map, the map, the night.', rising);
    expect({ first: first?.lesson.name, lasting: lasting?.lesson.name }).toEqual({
      first: '1',
      lasting: '3',
    });
  });
});

describe('what holds a text back', () => {
  const { heldBackAt, lessons } = fit('The night. The night light. The mud. The top, Kim.');
  const { things, words } = heldBackAt(lessons[0]?.lesson ?? never());

  it('is told by spelling: what would help most first, with the words that need it', () => {
    expect(
      things.map(({ missing, alone, words: needing }) =>
        [missingLabel(missing), missing.lesson?.name ?? '–', alone, ...needing.map(({ text }) => text)].join(
          ' ',
        ),
      ),
    ).toEqual([
      'igh as in light 3 2 night light',
      'o as in top 2 1 top',
      'l as it sounds here – 0 light',
      'u as in sun 2 0 mud',
      'd as in mud 2 0 mud',
    ]);
    expect(things[0]?.rise).toBe(2 / 10);
  });

  it('names apart what the writer declared, and what no lesson makes readable', () => {
    const text =
      '---\nlesson: "1"\nnames: [Kim]\nstory words: { cake: sweet bread }\n---\nKim and the cake. Kim ate. The night.';
    const found = fit(text);
    const { declared, never: unreadable } = found.heldBackAt(found.lessons[0]?.lesson ?? never());
    expect(declared.map((word) => word.text)).toEqual(['Kim', 'cake']);
    expect(unreadable.map((word) => word.text)).toEqual(['and', 'ate']);
  });

  it('is told by word, with the lesson at which it can be read', () => {
    expect(words.map(({ text, count, lesson }) => `${text} ${count} ${lesson?.name ?? '–'}`)).toEqual([
      'night 2 3',
      'light 1 –',
      'mud 1 2',
      'top 1 2',
      'Kim 1 –',
    ]);
  });
});

function never(): never {
  throw new Error('The sequence has lessons.');
}
