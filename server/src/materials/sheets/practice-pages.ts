import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import type { StudioStory } from '../layout/studio.ts';
import type { PracticePart } from '../order.ts';
import { wordsNotTaught } from './lesson-words.ts';
import { planBoxes } from './practice-boxes.ts';
import { planChainPage } from './practice-chain.ts';
import { planHunt } from './practice-hunt.ts';
import { planSentences } from './practice-sentences.ts';

/** A part of the practice pages, ready to be drawn: what the child works on, and the key for the teacher. */
export interface PracticePlan {
  /** What to do, as the teacher reads it out. */
  readonly instruction: string;
  draw(flow: Flow): void;
  drawKey(flow: Flow): void;
}

/** Letters of what the child reads and fills in, in points. */
export const practiceSize = 20;

/**
 * Sets the practice pages of a story, each part on a page of its own, and their key at the end. A part for which the
 * story has no matter is left out, and the key says so; when none is left, the page does.
 */
export function drawPracticePages(story: StudioStory, flow: Flow, parts: ReadonlySet<PracticePart>): void {
  const wanted = [...parts].map((part) => ({
    heading: planners[part].heading,
    plan: planners[part].plan(story),
  }));
  const plans = wanted.flatMap(({ heading, plan }) => (plan === undefined ? [] : [{ heading, plan }]));
  flow.heading(story.title, 1);
  if (plans.length === 0) {
    flow.paragraph([{ text: 'This story has nothing for the practice pages that were asked for.' }]);
    return;
  }
  for (const [index, { heading, plan }] of plans.entries()) {
    if (index > 0) flow.startPage();
    flow.heading(heading, 2);
    flow.paragraph([{ text: plan.instruction }], { size: 13, ink: inks.quiet, spaceAfter: 14 });
    plan.draw(flow);
  }
  flow.startPage();
  flow.heading('Key for the teacher', 1);
  const leftOut = wanted.filter(({ plan }) => plan === undefined).map(({ heading }) => heading);
  if (leftOut.length > 0)
    flow.row('Left out', [{ text: `${leftOut.join(', ')}: the story has no matter for it` }]);
  const untaught = wordsNotTaught(story.printed.review).map((word) => story.text(word));
  if (untaught.length > 0) flow.row('Not taught yet', [{ text: untaught.join(', ') }]);
  for (const { heading, plan } of plans) {
    flow.together((target) => {
      target.heading(heading, 2);
      plan.drawKey(target);
    });
  }
}

const planners: Readonly<
  Record<PracticePart, { readonly heading: string; plan(story: StudioStory): PracticePlan | undefined }>
> = {
  hunt: { heading: 'Word hunt', plan: planHunt },
  boxes: { heading: 'Sound boxes', plan: planBoxes },
  chain: { heading: 'Word chain', plan: planChainPage },
  sentences: { heading: 'Finish the sentences', plan: planSentences },
};
