import { foldedWord } from '../../text/folded-word.ts';
import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { widthOf } from '../pdf/typeface.ts';
import { lettersNeeded } from './chain-steps.ts';
import { practiceWords, usedStoryWords } from './lesson-words.ts';

/** Sets cards to cut out: the words of the lesson, then the letters that its chain needs, and no others. */
export function drawCards(story: StudioStory, flow: Flow): void {
  const words = cardWords(story);
  flow.heading(story.title, 1);
  if (words.length > 0) {
    flow.heading('Word cards', 2, 140);
    drawGrid(words, { columns: 2, height: 106, size: 46 }, flow);
  }
  const letters = lettersNeeded(story.printed.chain).map((each) => story.text(each));
  if (letters.length > 0) {
    if (words.length > 0) flow.startPage();
    flow.heading('Letter cards', 2, 140);
    drawGrid(letters, { columns: 4, height: 106, size: 50 }, flow);
  }
  if (words.length + letters.length === 0) {
    flow.paragraph([{ text: 'This lesson has no new words and the story no word with a new spelling.' }]);
  }
}

/** The lesson's new high-frequency words, the words that practise its spellings, the story words. */
function cardWords(story: StudioStory): readonly string[] {
  const { review } = story.printed;
  const words = [
    ...review.taught.newHighFrequencyWords,
    ...practiceWords(review).map(({ text }) => text),
    ...usedStoryWords(review).map(({ word }) => word),
  ];
  const byFold = new Map(words.map((word) => [foldedWord(word), story.text(word)] as const).reverse());
  return [...new Set(words.map(foldedWord))].map((key) => byFold.get(key) ?? key);
}

/** A grid of cards with common edges, so that one cut serves two. */
function drawGrid(
  texts: readonly string[],
  { columns, height, size }: { readonly columns: number; readonly height: number; readonly size: number },
  flow: Flow,
): void {
  const width = flow.width / columns;
  for (let first = 0; first < texts.length; first += columns) {
    const page = flow.page;
    flow.keep(height);
    const row = texts.slice(first, first + columns);
    const bottom = flow.y + height;
    const right = flow.side + row.length * width;
    const cut = { ink: inks.line, lineWidth: 0.75, dash: [4, 3] };
    if (first === 0 || flow.page !== page) flow.page.line([flow.side, flow.y], [right, flow.y], cut);
    flow.page.line([flow.side, bottom], [right, bottom], cut);
    for (let column = 0; column <= row.length; column++) {
      const x = flow.side + column * width;
      flow.page.line([x, flow.y], [x, bottom], cut);
    }
    for (const [column, text] of row.entries()) {
      const natural = widthOf(text, flow.faces.regular, size);
      const fitting = Math.min(size, (size * (width - 24)) / natural);
      flow.page.text(text, flow.side + (column + 0.5) * width, flow.y + height / 2 + 0.24 * fitting, {
        face: flow.faces.regular,
        size: fitting,
        anchor: 'middle',
        node: flow.node.add('P'),
      });
    }
    flow.skip(height);
  }
}
