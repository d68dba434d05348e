import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import type { PracticePart } from '../order.ts';
import { planBoxes } from './practice-boxes.ts';
import { planChainPage } from './practice-chain.ts';
import { planHunt } from './practice-hunt.ts';
import { planSentences } from './practice-sentences.ts';

/** A part of the practice pages, ready to be drawn: what the child works on, and the key for the teacher. */
export interface PracticePlan {
  readonly heading: string;
  /** What to do, as the teacher reads it out. */
  readonly instruction: string;
  draw(flow: Flow): void;
  drawKey(flow: Flow): void;
}

/** Letters of what the child reads and fills in, in points. */
export const practiceSize = 20;

/**
 * Sets the practice pages of a story, each part on a page of its own, and their key at the end. A part for which the
 * story has no matter is left out; when none is left, the page says so.
 */
export function drawPracticePages(story: StudioStory, flow: Flow, parts: ReadonlySet<PracticePart>): void {
  const planners: Readonly<Record<PracticePart, (story: StudioStory) => PracticePlan | undefined>> = {
    hunt: planHunt,
    boxes: planBoxes,
    chain: planChainPage,
    sentences: planSentences,
  };
  const plans = [...parts].flatMap((part) => planners[part](story) ?? []);
  flow.heading(story.title, 1);
  if (plans.length === 0) {
    flow.paragraph([{ text: 'This story has nothing for the practice pages that were asked for.' }]);
    return;
  }
  for (const [index, plan] of plans.entries()) {
    if (index > 0) flow.startPage();
    flow.heading(plan.heading, 2);
    flow.paragraph([{ text: plan.instruction }], { size: 13, ink: inks.quiet, spaceAfter: 14 });
    plan.draw(flow);
  }
  flow.startPage();
  flow.heading('Key for the teacher', 1);
  for (const plan of plans) {
    flow.together((target) => {
      target.heading(plan.heading, 2);
      plan.drawKey(target);
    });
  }
}
