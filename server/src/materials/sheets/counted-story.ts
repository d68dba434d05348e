import type { PlacedPage, Sentence } from '../../story/story.ts';
import { bookPages } from '../book/book-pages.ts';
import type { Flow } from '../layout/flow.ts';
import { brokenLines } from '../layout/lines.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { wordsOnLines } from './counted-lines.ts';

const labelWidth = 58;
const countWidth = 44;
const textSize = 13;

/** Sets the pages as the child has them, with what belongs to each for the teacher, and the count of words at each line's end. */
export function drawCountedStory(story: StudioStory, flow: Flow): void {
  flow.heading('The story', 2);
  flow.paragraph(
    [{ text: 'The figure at the end of a line is the number of words up to there, for timed reading.' }],
    { ink: inks.quiet, size: 10, spaceAfter: 8 },
  );
  const numbers = new Map(bookPages(story).map(({ placed }, index) => [placed, index + 1]));
  let count = 0;
  for (const placed of story.printed.review.story.pages) {
    const number = numbers.get(placed);
    if (placed.page.notes.length === 0 && number === undefined) continue;
    const before = count;
    flow.together((target) => {
      if (number !== undefined) drawPageNumber(number, target);
      count = before + drawPage(placed, before, story, target);
      target.skip(9);
    });
  }
}

function drawPageNumber(number: number, flow: Flow): void {
  const look = { face: flow.faces.bold, size: 10, ink: inks.quiet, node: flow.node.add('P') };
  flow.page.text(`page ${number}`, flow.side, flow.y + 14, look);
}

/** Sets prompts, notes of pictures and sentences where they stand in the page; gives how many words it has. */
function drawPage({ page, start }: PlacedPage, before: number, story: StudioStory, flow: Flow): number {
  let count = 0;
  const textAt = (text: string, at: number): string =>
    story.text(text, { start: start + at, end: start + at + 1 });
  const things = [
    ...page.notes.map(({ text, span }) => ({
      at: span.start,
      draw: () => {
        const lines = text.split('\n').map((line) => textAt(line, span.start));
        drawNote(lines, flow);
      },
    })),
    ...page.illustrations
      .filter(({ note }) => note.trim() !== '')
      .map(({ note, span }) => ({
        at: span.start,
        draw: () => drawPictureNote(textAt(`Picture: ${note.trim()}`, span.start), flow),
      })),
    ...page.sentences.map((sentence) => ({
      at: sentence.span.start,
      draw: () => {
        const span = { start: start + sentence.span.start, end: start + sentence.span.end };
        const { text: whole, lines = [whole] } = sentence;
        const texts = lines.map((line) => story.text(line, span));
        drawSentence(sentence, texts, before + count, flow);
        count += sentence.words.length;
      },
    })),
  ].sort((one, other) => one.at - other.at);
  for (const { draw } of things) draw();
  return count;
}

/** Sets a sentence, each line with the count of words up to its end; `before` words stand before it. */
function drawSentence(sentence: Sentence, texts: readonly string[], before: number, flow: Flow): void {
  const style = { face: flow.faces.regular, size: textSize, wordSpace: 1.15 };
  const lines = texts.flatMap((text) => brokenLines(text, flow.width - labelWidth - countWidth, style));
  const counts = wordsOnLines(lines, sentence);
  const node = flow.node.add('P');
  let count = before;
  for (const [index, line] of lines.entries()) {
    flow.keep(textSize * 1.5);
    flow.skip(textSize * 1.12);
    count += counts[index] ?? 0;
    flow.page.text(line, flow.side + labelWidth, flow.y, { ...style, node });
    flow.page.text(String(count), flow.side + flow.width, flow.y, {
      face: flow.faces.regular,
      size: 10.5,
      ink: inks.quiet,
      anchor: 'end',
      node: flow.node.add('P'),
    });
    flow.skip(textSize * 0.38);
  }
}

/** Sets what the teacher says or asks, with a line beside it. */
function drawNote(lines: readonly string[], flow: Flow): void {
  const [size, leading] = [11, 1.45];
  flow.skip(3);
  for (const text of lines) {
    const [page, before] = [flow.page, flow.y];
    flow.paragraph([{ text }], {
      indent: labelWidth + 12,
      outdent: countWidth,
      size,
      type: 'Note',
      leading,
    });
    const top = flow.page === page ? before : flow.y - size * leading;
    const x = flow.side + labelWidth + 2;
    flow.page.line([x, top + 2], [x, flow.y - 1], { ink: inks.line, lineWidth: 1.5 });
  }
  flow.skip(5);
}

function drawPictureNote(text: string, flow: Flow): void {
  flow.paragraph([{ text }], {
    indent: labelWidth,
    outdent: countWidth,
    size: 10,
    ink: inks.quiet,
    spaceAfter: 1,
    leading: 1.4,
  });
}
