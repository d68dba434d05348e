import { describe, expect, it } from 'vitest';
import type { Review } from '../../../server/src/review/review.ts';
import { reviewStory } from '../../../server/src/review/review-story.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { handPhonics } from '../../support/hand-phonics.ts';
import { taughtAt } from '../../support/reviewed.ts';

const phonics = handPhonics(`map m=M a=AE1 p=P
  sun s=S u=AH1 n=N
  mat m=M a=AE1 t=T
  top t=T o=AA1 p=P`);
const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [m as in map, a as in map, t as in top]
`;
const taught = taughtAt(sequence, '1', phonics);

const story = (second: string, frontMatter = '') =>
  `---\nlesson: "1"\n${frontMatter}---\nmat mat\n\n---\n\n${second}\n\n---\n\nmap sun\n`;

/** Reviews one version after another as an editor does; gives both reviews. */
function edited(before: string, after: string, laterTaught = taught): readonly [Review, Review] {
  const firstStory = readStory(before);
  const first = reviewStory({ story: firstStory, taught, phonics });
  return [first, reviewStory({ story: readStory(after, firstStory), taught: laterTaught, phonics }, first)];
}

/** For each page of the later review, whether it is the earlier one's object. */
function kept([first, second]: readonly [Review, Review]): readonly boolean[] {
  const before = new Set(first.pages.map(({ reviewed }) => reviewed));
  return second.pages.map(({ reviewed }) => before.has(reviewed));
}

describe('a review after an edit', () => {
  it('reads only the changed page anew', () => {
    expect(kept(edited(story('mat sun'), story('mat map')))).toEqual([true, false, true]);
  });

  it('moves the findings of the pages behind', () => {
    const [, after] = edited(story('mat'), story('mat mat mat'));
    expect(
      after.findings
        .filter(({ rule }) => rule === 'untaught-spelling')
        .map(({ span }) => after.story.text.slice(span.start, span.end)),
    ).toEqual(['map', 'sun']);
  });

  it('keeps its pages when the front matter changes in what says nothing of words', () => {
    expect(kept(edited(story('mat'), story('mat', 'title: Mats\n')))).toEqual([true, true, true]);
  });

  it.each(['names: [Sun]\n', 'story words: {sun: the light of day}\n', 'pronunciations: {sun: s-u-n}\n'])(
    'reads every page anew with %s',
    (frontMatter) => {
      expect(kept(edited(story('mat'), story('mat', frontMatter)))).toEqual([false, false, false]);
    },
  );

  it('reads every page anew when something else is taught', () => {
    const other = taughtAt(sequence.replace('t as in top', 't as in top, p as in map'), '1', phonics);
    expect(kept(edited(story('mat'), story('mat'), other))).toEqual([false, false, false]);
  });
});
