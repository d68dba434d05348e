import { withoutStop } from '../../text/without-stop.ts';
import { lessonName } from '../book/title-page.ts';
import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { drawBoxes, widthOfBoxes } from './box-row.ts';
import { chainSteps } from './chain-steps.ts';
import { drawCountedStory } from './counted-story.ts';
import { dictationSentences } from './dictation.ts';
import { drawFigures } from './figures.ts';
import {
  chosenWords,
  highFrequencyWords,
  practiceWords,
  usedStoryWords,
  wordsNotTaught,
} from './lesson-words.ts';
import { countOfSounds, hasLateLetters, printedBoxes } from './sound-boxes.ts';

/** Sets the teacher's copy of a story. */
export function drawTeacherCopy(story: StudioStory, flow: Flow): void {
  const { lesson, sequence } = story.printed.review.taught;
  flow.heading(story.title, 1);
  const where = sequence.title === '' ? '' : ` of ${sequence.title}`;
  const head = story.text(`Teacher’s copy. ${lessonName(lesson)}${where === '' ? '' : `,${where}`}`);
  flow.paragraph([{ text: head }], { ink: inks.quiet, spaceAfter: 4 });
  drawFocus(story, flow);
  drawCountedStory(story, flow);
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
  if (words.length > 0) flow.row('Words to practise', [{ text: words.join(', ') }]);
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

function drawChain(story: StudioStory, flow: Flow): void {
  const steps = chainSteps(story.printed.chain);
  if (steps.length < 2) return;
  flow.heading('Word building', 2);
  const pieces = steps.flatMap(({ word, instruction }, index) => [
    { text: index === 0 ? 'Build ' : ` ${withoutStop(instruction)}: ` },
    { text: story.text(word), isBold: true },
    { text: '.' },
  ]);
  flow.paragraph(pieces, { leading: 1.6 });
}

function drawSoundBoxes(story: StudioStory, flow: Flow): void {
  const words = chosenWords(story.printed.review, 12);
  if (words.length === 0) return;
  flow.heading('Sound boxes', 2, 90);
  const rows = words.map(({ text, reading }) => ({
    text,
    boxes: printedBoxes(story, text, reading.parts),
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
