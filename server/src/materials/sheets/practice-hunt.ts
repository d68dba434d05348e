import { counted } from '../../review/wording.ts';
import { foldedWord } from '../../text/folded-word.ts';
import type { Flow } from '../layout/flow.ts';
import { brokenLines } from '../layout/lines.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { highFrequencyWords } from './lesson-words.ts';
import { type PracticePlan, practiceSize } from './practice-pages.ts';
import { drawWordList } from './word-list.ts';

const mostWords = 6;

/** A hunt for high-frequency words: the text with numbered lines to mark up; the key has place and count of each word. */
export function planHunt(story: StudioStory): PracticePlan | undefined {
  const words = highFrequencyWords(story.printed.review).slice(0, mostWords);
  if (words.length === 0) return undefined;
  const sentences = story.printed.review.story.pages.flatMap(({ page, start }) =>
    page.sentences.map((sentence) => ({
      text: story.text(sentence.text, { start: start + sentence.span.start, end: start + sentence.span.end }),
      words: sentence.words.map(({ text }) => foldedWord(text)),
    })),
  );
  return {
    instruction: 'Say each word. Find it in the story and draw a ring around it each time.',
    draw: (flow) => {
      const sought = words.map((word) => story.text(word));
      drawWordList(sought, flow);
      for (const [index, { text }] of sentences.entries()) {
        drawNumbered(text, index + 1, flow, () => drawWordList(sought, flow));
      }
    },
    drawKey: (flow) => {
      for (const word of words) {
        const places = placesOf(word, sentences);
        const listed = places.map(({ line, word: at }) => `line ${line}, word ${at}`).join('; ');
        flow.row(
          story.text(word),
          [{ text: counted(places.length, 'time'), isBold: true }, { text: `: ${listed}` }],
          84,
        );
      }
    },
  };
}

/** Where a word stands: in which numbered sentence, and as which of its words, both from 1. */
export function placesOf(
  word: string,
  sentences: readonly { readonly words: readonly string[] }[],
): readonly { readonly line: number; readonly word: number }[] {
  const sought = foldedWord(word);
  return sentences.flatMap(({ words }, line) =>
    words.flatMap((each, at) => (each === sought ? [{ line: line + 1, word: at + 1 }] : [])),
  );
}

/** Sets a sentence behind its number; on a new page `atHead` goes first, so that nobody has to turn back for the words. */
function drawNumbered(text: string, number: number, flow: Flow, atHead: () => void): void {
  const style = { face: flow.faces.regular, size: practiceSize, wordSpace: 1.6 };
  const indent = 34;
  const lines = brokenLines(text, flow.width - indent, style);
  const { page } = flow;
  flow.keep(lines.length * practiceSize * 1.6);
  if (flow.page !== page) atHead();
  const node = flow.node.add('P');
  for (const [index, line] of lines.entries()) {
    flow.skip(practiceSize * 1.1);
    if (index === 0) {
      flow.page.text(String(number), flow.side, flow.y, {
        face: flow.faces.regular,
        size: 12,
        ink: inks.quiet,
        node,
      });
    }
    flow.page.text(line, flow.side + indent, flow.y, { ...style, node });
    flow.skip(practiceSize * 0.5);
  }
}
