import type { Flow } from '../layout/flow.ts';
import { inks } from '../layout/page-maker.ts';
import { widthOf } from '../pdf/typeface.ts';

/** Sets words side by side, each in a frame, above what the child does with them. */
export function drawWordList(words: readonly string[], flow: Flow): void {
  const face = flow.faces.regular;
  const size = 20;
  let x = 0;
  for (const word of words) {
    const width = widthOf(word, face, size) + 26;
    if (x > 0 && x + width > flow.width) {
      x = 0;
      flow.skip(50);
    }
    const place = { x: flow.side + x, y: flow.y, width, height: 38 };
    flow.page.box(place, { stroke: inks.line, radius: 8 });
    flow.page.text(word, place.x + 13, flow.y + 26, { face, size, node: flow.node.add('P') });
    x += width + 10;
  }
  flow.skip(58);
}
