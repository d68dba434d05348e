import { describe, expect, it } from 'vitest';
import { gapMessage } from '../../../server/src/series/gap-wording.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { seriesOf } from '../../support/series.ts';
import { storyAt } from '../../support/small-lane.ts';

const sequence = (limits: string) => `title: Willow Lane
targets: { readable: 0, sentence: 20, page: 50, practice: 0, repeats: 0 }
series: ${limits}
lessons:
  - name: "1"
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan, n as in nap, i as in sit]
    high-frequency words: [the]
  - name: "2"
    spellings: [sh as in ship]
    high-frequency words: [said]
  - name: "3"
    spellings: [d as in dad]
  - name: "4"
    spellings: [o as in top]
`;

const titled = (lesson: string, title: string, body: string) => storyAt(lesson, `# ${title}\n\n${body}`);

/** The messages of the gaps of one kind. */
function gaps(kind: string, limits: string, stories: readonly string[]): readonly string[] {
  const named = Object.fromEntries(stories.map((text, index) => [`${index + 1}.md`, text]));
  return seriesOf(sequence(limits), named, packagePhonics)
    .gaps.filter((gap) => gap.kind === kind)
    .map(gapMessage);
}

const ship = titled('2', 'Ship', 'A ship sat.');
const pan = titled('2', 'Pan', 'A pan sat.');
const map = (lesson: string, title: string) => titled(lesson, title, 'A map sat.');

describe('gaps of a series', () => {
  it('names a spelling that no story of its lesson uses, though a later one does', () => {
    const found = gaps('not-practised', '{}', [pan, map('2', 'Map'), titled('3', 'Dash', 'Dad in a ship.')]);
    expect(found).toEqual(['sh as in ship is not used in any of the 2 stories of its own lesson 2.']);
  });

  it('names a spelling that no story uses, and that only once', () => {
    expect(gaps('never-used', '{}', [pan])).toContain('sh as in ship (lesson 2) is used in no story.');
    expect(gaps('not-practised', '{}', [pan])).not.toContain('sh');
  });

  it.each([
    [
      '{ again within: 2 }',
      2,
      ['sh as in ship does not come again in the next 2 stories after Ship (lesson 2).'],
    ],
    // With one story fewer to come nobody can say yet.
    ['{ again within: 3 }', 2, []],
    [
      '{ again within: 3 }',
      3,
      ['sh as in ship does not come again in the next 3 stories after Ship (lesson 2).'],
    ],
  ])('by %s, with %i stories to come', (limits, later, expected) => {
    const after = Array.from({ length: later }, (_, index) => map('3', `Map ${index}`));
    expect(gaps('not-again', limits, [ship, ...after])).toEqual(expected);
  });

  it('takes the last of several stories of a lesson as the end of the lesson', () => {
    const stories = [ship, pan, map('3', 'One'), titled('4', 'Two', 'A ship sat.')];
    expect(gaps('not-again', '{ again within: 1 }', stories)).toEqual([
      'sh as in ship does not come again in the next story after Pan (lesson 2).',
    ]);
    expect(gaps('not-again', '{ again within: 2 }', stories)).toEqual([]);
  });

  it('names the longest stretch without a high-frequency word, from its lesson on', () => {
    const said = titled('2', 'Said', 'The ship, said Tim.');
    const stories = [map('1', 'Zero'), said, map('3', 'One'), map('3', 'Two'), said, map('4', 'Three')];
    expect(gaps('unseen', '{ unseen for: 2 }', stories)).toEqual([
      '“the” is not seen for 3 stories, from One (lesson 3) to Three (lesson 4).',
      '“said” is not seen for 3 stories, from One (lesson 3) to Three (lesson 4).',
    ]);
    expect(gaps('unseen', '{ unseen for: 4 }', stories)).toEqual([]);
  });

  it('names a high-frequency word that no story has, a taught one only', () => {
    expect(gaps('never-met', '{}', [map('1', 'Map')])).toEqual([
      '“the” (lesson 1) is in no story from its lesson on.',
    ]);
  });

  it('names a lesson without a story only when a later one has one', () => {
    expect(gaps('lesson-without-story', '{}', [map('1', 'One'), map('3', 'Three')])).toEqual([
      'No story is written for lesson 2.',
    ]);
  });

  it.each([
    ['{ met at least: 2 }', ['mat']],
    ['{ met at least: 3 }', ['sat', 'mat']],
    ['{ met at least: 1 }', []],
  ])('names words met too seldom, by %s; names are not asked', (limits, words) => {
    const stories = [
      storyAt('1', 'A map sat. Vic. Tim.', 'names: [Vic, Tim]\n'),
      storyAt('1', 'A map, a map, a mat sat.'),
    ];
    const found = gaps('seldom-met', limits, stories);
    expect(found.map((message) => /“(.*)”/.exec(message)?.[1])).toEqual(words);
  });

  it('calls no word of a single story seldom', () => {
    expect(gaps('seldom-met', '{}', [storyAt('1', 'A map sat.')])).toEqual([]);
  });

  it('names a missed target with what falls short', () => {
    const long = titled('1', 'Long', `${'A map sat, '.repeat(8)}a map sat.`);
    expect(gaps('target-missed', '{}', [long])).toEqual([
      'Long (lesson 1) falls short: 1 sentence too long.',
    ]);
  });

  it('finds nothing in a series without stories', () => {
    expect(seriesOf(sequence('{}'), {}, packagePhonics).gaps).toEqual([]);
  });
});

describe('limits in the sequence', () => {
  it.each([
    ['{ again within: 0 }', '“again within” is a whole number from 1 to 1000, not “0”.'],
    ['{ unseen for: often }', '“unseen for” is a whole number from 1 to 1000, not “often”.'],
    ['{ unsen for: 4 }', 'Series has no “unsen for”. Did you mean “unseen for”? It is read as that.'],
    ['[3, 5]', 'Series is written as keys and values, as in “again within: …”.'],
  ])('%s is a problem at its place', (limits, message) => {
    const text = sequence(limits);
    const { problems } = seriesOf(text, {}, packagePhonics).sequence;
    expect(problems.map((problem) => problem.message)).toEqual([message]);
    const start = text.indexOf(limits);
    expect(problems[0]?.span.start).toBeGreaterThanOrEqual(start);
    expect(problems[0]?.span.end).toBeLessThanOrEqual(start + limits.length);
  });
});
