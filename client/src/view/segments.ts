import type { Segment } from '../gauge/model.ts';
import { append, setShare } from './dom.ts';

/**
 * Draws lengths of kinds side by side, each kind in its own pattern.
 *
 * @returns a function that brings the bar to new lengths.
 */
export function appendSegments(parent: Element): (segments: readonly Segment[]) => void {
  const bar = append(parent, 'span', 'segments');
  bar.setAttribute('aria-hidden', 'true');
  const drawn = new Map<string, HTMLElement>();
  return (segments) => {
    let left = 0;
    for (const { kind, share } of segments) {
      const element = drawn.get(kind) ?? append(bar, 'span', `segment ${kind}`);
      drawn.set(kind, element);
      setShare(element, 'left', left);
      setShare(element, 'width', share);
      left += share;
    }
  };
}
