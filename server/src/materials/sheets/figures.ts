import { shownPercent } from '../../review/figures.ts';
import { counted } from '../../review/wording.ts';
import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';

/** The figures of the review, with what they mean and what they do not. */
export function drawFigures(story: StudioStory, flow: Flow): void {
  const { review } = story.printed;
  const { counts, readable, decodable, taught } = review;
  const longest = Math.max(
    0,
    ...review.pages.flatMap(({ placed }) => placed.page.sentences.map(({ words }) => words.length)),
  );
  flow.heading('The figures of the text', 2, 110);
  const row = (name: string, value: string): void => flow.row(name, [{ text: value }]);
  row(
    'Readable',
    `${shownPercent(readable)} % of ${counted(counts.words, 'word')}; the target is ${taught.targets.readable} %`,
  );
  row('Decodable', `${shownPercent(decodable)} %`);
  row(
    'Words by kind',
    [
      `decodable ${counts.decodable}`,
      `high-frequency ${counts['high-frequency']}`,
      `other names ${counts.name}`,
      `story words ${counts['story-word']}`,
      `not taught ${counts['not-taught']}`,
    ].join(', '),
  );
  if (taught.newSpellings.length > 0) {
    row(
      'Practice',
      `${counted(review.practice, 'word')} with a new spelling; the target is ${taught.targets.practice}`,
    );
  }
  for (const { word, spans } of review.newWordUses) {
    row(`“${story.text(word)}”`, `${counted(spans.length, 'time')}; the target is ${taught.targets.repeats}`);
  }
  row('Longest sentence', `${counted(longest, 'word')}; the target is at most ${taught.targets.sentence}`);
  flow.skip(4);
  for (const text of meanings) flow.paragraph([{ text }], { size: 10, ink: inks.quiet, spaceAfter: 3 });
}

const meanings = [
  'What they mean: “readable” is the share of the running words that children who have been taught up to this lesson can sound out or know as wholes; “decodable” is the share they can sound out. Names and story words count in the whole only, the title not at all.',
  'What they do not mean: they describe this text against this list of lessons. They say nothing of a child: not whether she reads well, not why she stumbles, not what she needs. They are no test and no diagnosis, and they do not tell whether the story is good. What to make of them stays with the teacher.',
];
