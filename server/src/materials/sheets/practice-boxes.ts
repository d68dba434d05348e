import { counted } from '../../review/wording.ts';
import type { StudioStory } from '../layout/studio.ts';
import { drawBoxes } from './box-row.ts';
import { chosenWords } from './lesson-words.ts';
import { type PracticePlan, practiceSize } from './practice-pages.ts';
import { countOfSounds, hasLateLetters, printedBoxes, type SoundBox } from './sound-boxes.ts';

const mostWords = 8;
const side = 46;

/** Sound boxes to fill: as many boxes as the word has sounds. */
export function planBoxes(story: StudioStory): PracticePlan | undefined {
  const words = chosenWords(story.printed.review, mostWords).map(({ text, reading }) => ({
    text: story.text(text),
    boxes: printedBoxes(story, text, reading.parts),
  }));
  if (words.length === 0) return undefined;
  return {
    instruction: `Say the word slowly. Write the letters of each sound into its box.${words.some(({ boxes }) => hasLateLetters(boxes)) ? ' A last e without a sound goes on the line.' : ''}`,
    draw: (flow) => {
      const face = flow.faces.regular;
      for (const { text, boxes } of words) {
        flow.keep(side + 16);
        const size = practiceSize;
        flow.page.text(text, flow.side, flow.y + side / 2 + 0.26 * size, {
          face,
          size,
          node: flow.node.add('P'),
        });
        const sounds = countOfSounds(boxes);
        const node = flow.node.add(
          'Figure',
          `${counted(sounds, 'empty box', 'empty boxes')} for the sounds of ${text}`,
        );
        drawBoxes(
          flow.page,
          boxes.flatMap(emptyBoxes),
          { x: flow.side + 170, y: flow.y, side, face, size, node },
          () => true,
        );
        flow.skip(side + 18);
      }
    },
    drawKey: (flow) => {
      const pieces = words.flatMap(({ text, boxes }, index) => {
        return [{ text, isBold: true }, { text: `: ${keyOf(boxes)}${index < words.length - 1 ? '; ' : ''}` }];
      });
      flow.paragraph(pieces);
    },
  };
}

/** As many empty boxes as sounds; what stands without a box gets room for its letters. */
function emptyBoxes({ sounds }: SoundBox): readonly { readonly letters: string; readonly sounds: number }[] {
  return sounds === 0
    ? [{ letters: '', sounds }]
    : Array.from({ length: sounds }, () => ({ letters: '', sounds: 1 }));
}

/** `c | a | k (e)`: what stands without a box is in brackets. */
function keyOf(boxes: readonly SoundBox[]): string {
  return boxes
    .map(({ letters, sounds }, index) => {
      if (sounds === 0) return ` (${letters})`;
      return `${index === 0 ? '' : ' | '}${letters}${sounds > 1 ? ` (${sounds} sounds)` : ''}`;
    })
    .join('');
}
