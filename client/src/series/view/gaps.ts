import type { SeriesGaps } from '../../../../server/src/editor/series/protocol.ts';
import { moveByArrowKeys } from '../../view/arrow-keys.ts';
import { append } from '../../view/dom.ts';
import type { Open } from './grid.ts';

/** Gaps of one kind that are listed at first; the rest come when they are asked for. */
const listedAtFirst = 12;

/** What the year lacks, kind by kind, each kind folded away until it is wanted. */
export function appendGaps(parent: Element, open: Open): (gaps: readonly SeriesGaps[]) => void {
  const list = append(parent, 'div', 'gaps');
  /** What the reader has unfolded or asked to see in full stays so. */
  const unfolded = new Set<string>();
  const whole = new Set<string>();
  let shown = '';

  const update = (groups: readonly SeriesGaps[]): void => {
    const now = JSON.stringify(groups);
    if (now === shown) return;
    shown = now;
    list.replaceChildren();
    if (groups.length === 0) append(list, 'p', '', 'Nothing is missing.');
    for (const group of groups) appendGroup(group, groups);
  };

  const appendGroup = ({ kind, heading, gaps }: SeriesGaps, groups: readonly SeriesGaps[]): void => {
    const details = append(list, 'details');
    details.open = unfolded.has(kind);
    details.addEventListener('toggle', () => {
      if (details.open) unfolded.add(kind);
      else unfolded.delete(kind);
    });
    append(details, 'summary', '', `${heading}: ${gaps.length}`);
    const items = append(details, 'ul');
    for (const { message, uri, place } of whole.has(kind) ? gaps : gaps.slice(0, listedAtFirst)) {
      const button = append(append(items, 'li'), 'button', 'link', message);
      button.type = 'button';
      button.addEventListener('click', () => open({ uri, place }));
    }
    moveByArrowKeys(items)();
    if (whole.has(kind) || gaps.length <= listedAtFirst) return;
    const more = append(details, 'button', 'more', `Show all ${gaps.length}`);
    more.type = 'button';
    more.addEventListener('click', () => {
      whole.add(kind);
      shown = '';
      update(groups);
      const again = [...list.querySelectorAll('details')][groups.findIndex((each) => each.kind === kind)];
      again?.querySelectorAll<HTMLElement>('li button')[listedAtFirst]?.focus();
    });
  };
  return update;
}
