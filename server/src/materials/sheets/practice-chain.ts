import type { StudioStory } from '../layout/studio.ts';
import { drawBoxes } from './box-row.ts';
import { chainSteps } from './chain-steps.ts';
import { type PracticePlan, practiceSize } from './practice-pages.ts';
import { printedBoxes } from './sound-boxes.ts';

const side = 46;

/** The word chain with a blank in each word for what is new in it; where something was taken away, the whole word is blank. */
export function planChainPage(story: StudioStory): PracticePlan | undefined {
  const steps = chainSteps(story.printed.chain);
  if (steps.length < 2) return undefined;
  return {
    instruction: 'Listen to the next word. Only one sound is not as before. Write what is missing.',
    draw: (flow) => {
      const face = flow.faces.regular;
      for (const [index, { word, parts, changed }] of steps.entries()) {
        const boxes = printedBoxes(story, word, parts);
        const isBlank = (at: number): boolean =>
          index > 0 && (changed === undefined || boxes[at]?.grapheme === changed);
        flow.keep(side + 16);
        const y = flow.y + side / 2 + 5;
        flow.page.text(String(index + 1), flow.side, y, { face, size: 13, node: flow.node.add('P') });
        const shown = boxes.map(({ letters }, at) => (isBlank(at) ? 'a blank' : letters)).join(', ');
        const node = flow.node.add('Figure', `Word ${index + 1} of the chain: ${shown}`);
        const row = { x: flow.side + 40, y: flow.y, side, face, size: practiceSize, node };
        drawBoxes(flow.page, boxes, row, isBlank);
        flow.skip(side + 16);
      }
    },
    drawKey: (flow) => {
      for (const [index, { word, instruction }] of steps.entries()) {
        const step = instruction === '' ? '' : `  ${instruction}`;
        flow.row(String(index + 1), [{ text: story.text(word), isBold: true }, { text: step }], 40);
      }
    },
  };
}
