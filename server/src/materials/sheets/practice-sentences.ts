import type { ReviewedWord } from '../../review/review.ts';
import { foldedWord } from '../../text/folded-word.ts';
import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import { typographic } from '../layout/typographic.ts';
import { widthOf } from '../pdf/typeface.ts';
import { practises } from './lesson-words.ts';
import { type PracticePlan, practiceSize } from './practice-pages.ts';
import { drawWordList } from './word-list.ts';

const mostSentences = 6;

/** Sentences of the story to finish: a word that practises what is new is missing in each, and stands in the list above them. */
export function planSentences(story: StudioStory): PracticePlan | undefined {
  const gaps = gapsOf(story);
  if (gaps.length === 0) return undefined;
  const answers = gaps.map(({ answer }) => answer).sort();
  return {
    instruction: 'Read the words. Write the one that is missing in each sentence.',
    draw: (flow) => {
      drawWordList(answers, flow);
      for (const [index, gap] of gaps.entries()) drawGap(gap, index + 1, flow);
    },
    drawKey: (flow) => {
      const pieces = gaps.flatMap(({ answer }, index) => [
        { text: `${index === 0 ? '' : '; '}${index + 1}: ` },
        { text: answer, isBold: true },
      ]);
      flow.paragraph(pieces);
      flow.paragraph([{ text: 'Another of the words is right too where it makes sense.' }], {
        ink: inks.quiet,
        size: 10,
      });
    },
  };
}

interface Gap {
  readonly before: string;
  readonly answer: string;
  readonly after: string;
}

/**
 * One gap a sentence; each answer once; not the first word, whose capital would tell it. Of sentences that are the same
 * but for the gap only the first is taken: nobody could tell which word belongs where.
 */
function gapsOf(story: StudioStory): readonly Gap[] {
  const gaps = new Map<string, Gap>();
  const { taught } = story.printed.review;
  for (const { placed, reviewed } of story.printed.review.pages) {
    const bySpan = new Map<number, ReviewedWord>(reviewed.words.map((each) => [each.word.span.start, each]));
    for (const sentence of placed.page.sentences) {
      const word = [...sentence.words].reverse().find((each) => {
        const found = bySpan.get(each.span.start);
        const isOnce =
          sentence.words.filter((other) => foldedWord(other.text) === foldedWord(each.text)).length === 1;
        return found !== undefined && practises(found, taught) && !each.opensSentence && isOnce;
      });
      if (word === undefined || gaps.size >= mostSentences || gaps.has(foldedWord(word.text))) continue;
      const span = { start: placed.start + sentence.span.start, end: placed.start + sentence.span.end };
      const text = story.text(sentence.text, span);
      const answer = typographic(word.text);
      const [, before, after] =
        new RegExp(`^(.*?)(?<![\\p{L}’])${escaped(answer)}(?![\\p{L}’])(.*)$`, 'u').exec(text) ?? [];
      if (before === undefined || after === undefined || sentence.words.length < 3) continue;
      const isAgain = [...gaps.values()].some((gap) => gap.before === before && gap.after === after);
      if (!isAgain) gaps.set(foldedWord(word.text), { before, answer, after });
    }
  }
  return [...gaps.values()];
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
}

const gapMark = '\ue000';
const gapWidth = 130;

/** Sets a sentence with a line to write on where the word is missing. */
function drawGap({ before, after }: Gap, number: number, flow: Flow): void {
  const style = { face: flow.faces.regular, size: practiceSize, wordSpace: 1.6 };
  const indent = 34;
  const space = widthOf(' ', style.face, style.size, style.wordSpace);
  const lineHeight = practiceSize * 1.75;
  flow.keep(2 * lineHeight);
  const node = flow.node.add('P');
  flow.skip(lineHeight);
  flow.page.text(String(number), flow.side, flow.y, { face: style.face, size: 12, ink: inks.quiet, node });
  let x = indent;
  for (const group of `${before}${gapMark}${after}`.split(' ').filter((each) => each !== '')) {
    const pieces = group.split(/(\ue000)/).filter((piece) => piece !== '');
    const widths = pieces.map((piece) =>
      piece === gapMark ? gapWidth : widthOf(piece, style.face, style.size),
    );
    const width = widths.reduce((sum, each) => sum + each, 0);
    if (x > indent && x + width > flow.width) {
      x = indent;
      flow.skip(lineHeight);
    }
    for (const [index, piece] of pieces.entries()) {
      const left = flow.side + x;
      if (piece === gapMark) {
        flow.page.line([left + 3, flow.y + 3], [left + gapWidth - 3, flow.y + 3], {
          ink: inks.quiet,
          lineWidth: 1,
        });
      } else {
        // With the space behind it, so that the words stay apart when the text is taken out of the document.
        const isLast = index === pieces.length - 1;
        flow.page.text(isLast ? `${piece} ` : piece, left, flow.y, { ...style, node });
      }
      x += widths[index] ?? 0;
    }
    x += space;
  }
  flow.skip(practiceSize * 0.7);
}
