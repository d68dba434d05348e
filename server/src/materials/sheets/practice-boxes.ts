import { counted } from '../../review/wording.ts';
import type { StudioStory } from '../layout/studio.ts';
import { drawBoxes } from './box-row.ts';
import { countOfSounds, practiceWords, soundBoxes } from './lesson-words.ts';
import { type PracticePlan, practiceSize } from './practice-pages.ts';

const mostWords = 8;
const side = 46;

/** Sound boxes to fill: as many boxes as the word has sounds. */
export function planBoxes(story: StudioStory): PracticePlan | undefined {
  const words = practiceWords(story.printed.review)
    .slice(0, mostWords)
    .map(({ text, reading }) => ({
      text: story.text(text),
      boxes: soundBoxes(reading).map((box) => ({ ...box, letters: story.text(box.letters) })),
    }));
  if (words.length === 0) return undefined;
  return {
    heading: 'Sound boxes',
    instruction: 'Say the word slowly. Write the letters of each sound into its box.',
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
        const single = Array.from({ length: sounds }, () => ({ letters: '', sounds: 1 }));
        drawBoxes(flow.page, single, { x: flow.side + 170, y: flow.y, side, face, size, node }, () => true);
        flow.skip(side + 18);
      }
    },
    drawKey: (flow) => {
      const pieces = words.flatMap(({ text, boxes }, index) => {
        const letters = boxes.map((box) =>
          box.sounds > 1 ? `${box.letters} (${box.sounds} sounds)` : box.letters,
        );
        return [
          { text, isBold: true },
          { text: `: ${letters.join(' | ')}${index < words.length - 1 ? '; ' : ''}` },
        ];
      });
      flow.paragraph(pieces);
    },
  };
}
