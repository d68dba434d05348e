import type { PlacedPage } from '../../story/story.ts';
import { bookPages } from '../book/book-pages.ts';
import { lessonName } from '../book/title-page.ts';
import type { Flow } from '../layout/flow.ts';
import { brokenLines } from '../layout/lines.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { drawBoxes, widthOfBoxes } from './box-row.ts';
import { chainSteps } from './chain-steps.ts';
import { wordsOnLines } from './counted-lines.ts';
import { dictationSentences } from './dictation.ts';
import { drawFigures } from './figures.ts';
import { highFrequencyWords, practiceWords, usedStoryWords, wordsNotTaught } from './lesson-words.ts';
import { countOfSounds, hasLateLetters, soundBoxes } from './sound-boxes.ts';

/** Sets the teacher's copy of a story. */
export function drawTeacherCopy(story: StudioStory, flow: Flow): void {
  const { lesson, sequence } = story.printed.review.taught;
  flow.heading(story.title, 1);
  const where = sequence.title === '' ? '' : ` of ${sequence.title}`;
  const head = story.text(`Teacher’s copy. ${lessonName(lesson)}${where === '' ? '' : `,${where}`}`);
  flow.paragraph([{ text: head }], { ink: inks.quiet, spaceAfter: 4 });
  drawFocus(story, flow);
  drawStory(story, flow);
  drawChain(story, flow);
  drawSoundBoxes(story, flow);
  drawDictation(story, flow);
  drawFigures(story, flow);
}

function drawFocus(story: StudioStory, flow: Flow): void {
  const { review } = story.printed;
  const { taught } = review;
  const { names } = review.story.frontMatter;
  flow.heading('Before reading', 2);
  const spellings = taught.newSpellings.flatMap(({ line }, index) => [
    ...(index === 0 ? [] : [{ text: ', ' }]),
    { text: line.letters, isBold: true },
    { text: ` as in ${line.keyWord}` },
  ]);
  flow.row('New spellings', spellings.length === 0 ? [{ text: 'none in this lesson' }] : spellings);
  const words = practiceWords(review).map(({ text }) => story.text(text));
  if (words.length > 0) flow.row('Words to practise them', [{ text: words.join(', ') }]);
  const fresh = taught.newHighFrequencyWords.map((word) => story.text(word));
  if (fresh.length > 0) flow.row('New high-frequency words', [{ text: fresh.join(', '), isBold: true }]);
  const isFresh = new Set(fresh.map((word) => word.toLowerCase()));
  const known = highFrequencyWords(review).filter((word) => !isFresh.has(story.text(word).toLowerCase()));
  if (known.length > 0)
    flow.row('High-frequency words met', [{ text: known.map((word) => story.text(word)).join(', ') }]);
  for (const [index, { word, meaning, span }] of usedStoryWords(review).entries()) {
    const explained = meaning.trim() === '' ? ': no meaning is given in the front matter' : `: ${meaning}`;
    flow.row(index === 0 ? 'Story words' : '', [
      { text: story.text(word, span), isBold: true },
      { text: story.text(explained, span) },
    ]);
  }
  const untaught = wordsNotTaught(review).map((word) => story.text(word));
  if (untaught.length > 0) flow.row('Not taught yet', [{ text: untaught.join(', ') }]);
  if (names.length > 0)
    flow.row('Names', [{ text: names.map(({ value, span }) => story.text(value, span)).join(', ') }]);
}

const labelWidth = 58;
const countWidth = 44;
const textSize = 13;

/** The pages as the child has them, with what belongs to each for the teacher, and the count of words at each line's end. */
function drawStory(story: StudioStory, flow: Flow): void {
  flow.heading('The story', 2);
  flow.paragraph(
    [{ text: 'The figure at the end of a line is the number of words up to there, for timed reading.' }],
    { ink: inks.quiet, size: 10, spaceAfter: 8 },
  );
  const numbers = new Map(bookPages(story).map(({ placed }, index) => [placed, index + 1]));
  let count = 0;
  for (const placed of story.printed.review.story.pages) {
    if (placed.page.notes.length === 0 && !numbers.has(placed)) continue;
    const before = count;
    flow.together((target) => {
      count = drawStoryPage(placed, numbers.get(placed), before, story, target);
    });
  }
}

function drawStoryPage(
  placed: PlacedPage,
  number: number | undefined,
  before: number,
  story: StudioStory,
  flow: Flow,
): number {
  const { page, start } = placed;
  let count = before;
  if (number !== undefined) {
    const look = { face: flow.faces.bold, size: 10, ink: inks.quiet, node: flow.node.add('P') };
    flow.page.text(`page ${number}`, flow.side, flow.y + 14, look);
  }
  const things = [
    ...page.notes.map((note) => ({ at: note.span.start, draw: () => drawNote(note.text, note.span.start) })),
    ...page.illustrations.map((picture) => ({
      at: picture.span.start,
      draw: () => drawPictureNote(picture.note, picture.span.start),
    })),
    ...page.sentences.map((sentence) => ({
      at: sentence.span.start,
      draw: () => {
        const span = { start: start + sentence.span.start, end: start + sentence.span.end };
        const style = { face: flow.faces.regular, size: textSize, wordSpace: 1.15 };
        const lines = brokenLines(
          story.text(sentence.text, span),
          flow.width - labelWidth - countWidth,
          style,
        );
        const counts = wordsOnLines(lines, sentence);
        const node = flow.node.add('P');
        for (const [index, line] of lines.entries()) {
          flow.keep(textSize * 1.5);
          flow.skip(textSize * 1.12);
          count += counts[index] ?? 0;
          flow.page.text(line, flow.side + labelWidth, flow.y, { ...style, node });
          const right = flow.side + flow.width;
          flow.page.text(String(count), right, flow.y, {
            ...{ face: flow.faces.regular, size: 10.5, ink: inks.quiet, anchor: 'end' as const },
            node: flow.node.add('P'),
          });
          flow.skip(textSize * 0.38);
        }
      },
    })),
  ].sort((one, other) => one.at - other.at);
  const span = (at: number) => ({ start: start + at, end: start + at + 1 });
  const drawNote = (text: string, at: number): void => {
    flow.skip(3);
    for (const line of text.split('\n')) {
      const [page0, y0] = [flow.page, flow.y];
      flow.paragraph([{ text: story.text(line, span(at)) }], {
        ...{ indent: labelWidth + 12, outdent: countWidth, size: 11, type: 'Note' as const, leading: 1.45 },
      });
      const [bottom, top] = [flow.y, flow.page === page0 ? y0 : flow.y - 11 * 1.45];
      const x = flow.side + labelWidth + 2;
      flow.page.line([x, top + 2], [x, bottom - 1], { ink: inks.line, lineWidth: 1.5 });
    }
    flow.skip(5);
  };
  const drawPictureNote = (note: string, at: number): void => {
    if (note.trim() === '') return;
    flow.paragraph([{ text: story.text(`Picture: ${note.trim()}`, span(at)) }], {
      ...{ indent: labelWidth, outdent: countWidth, size: 10, ink: inks.quiet, spaceAfter: 1, leading: 1.4 },
    });
  };
  for (const { draw } of things) draw();
  flow.skip(9);
  return count;
}

function drawChain(story: StudioStory, flow: Flow): void {
  const steps = chainSteps(story.printed.chain);
  if (steps.length < 2) return;
  flow.heading('Word building', 2);
  const pieces = steps.flatMap(({ word, instruction }, index) => [
    { text: index === 0 ? 'Build ' : ` ${instruction.replace(/\.$/, '')}: ` },
    { text: story.text(word), isBold: true },
    { text: '.' },
  ]);
  flow.paragraph(pieces, { leading: 1.6 });
}

function drawSoundBoxes(story: StudioStory, flow: Flow): void {
  const words = practiceWords(story.printed.review).slice(0, 12);
  if (words.length === 0) return;
  flow.heading('Sound boxes', 2, 90);
  const rows = words.map(({ text, reading }) => ({
    text,
    boxes: soundBoxes(reading.parts).map((box) => ({ ...box, letters: story.text(box.letters) })),
  }));
  const explained = [
    'One box for each sound.',
    ...(rows.some(({ boxes }) => boxes.some(({ sounds }) => sounds > 1))
      ? ['A broken line divides letters that say two sounds.']
      : []),
    ...(rows.some(({ boxes }) => hasLateLetters(boxes))
      ? ['An e without a box goes with the vowel before it; in word building the two are written a_e.']
      : []),
  ];
  flow.paragraph([{ text: explained.join(' ') }], { ink: inks.quiet, size: 10, spaceAfter: 6 });
  const side = 26;
  const face = flow.faces.regular;
  let x = 0;
  for (const { text, boxes } of rows) {
    const width = widthOfBoxes(boxes, side, face, 13);
    if (x > 0 && x + width > flow.width) {
      x = 0;
      flow.skip(side + 12);
    }
    if (x === 0) flow.keep(side + 12);
    const node = flow.node.add(
      'Figure',
      `${story.text(text)}: ${countOfSounds(boxes)} sounds, ${boxes.map(({ letters }) => letters).join(', ')}`,
    );
    drawBoxes(flow.page, boxes, { x: flow.side + x, y: flow.y, side, face, size: 13, node }, () => false);
    x += width + 22;
  }
  flow.skip(side + 10);
}

function drawDictation(story: StudioStory, flow: Flow): void {
  const sentences = dictationSentences(story.printed.review);
  if (sentences.length === 0) return;
  flow.heading('Sentences to dictate', 2);
  for (const { placed, sentence } of sentences) {
    const span = { start: placed.start + sentence.span.start, end: placed.start + sentence.span.end };
    flow.paragraph([{ text: story.text(sentence.text, span) }], { size: 12.5, spaceAfter: 2 });
  }
}
