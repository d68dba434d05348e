import type { ItemState } from '../gauge/model.ts';

/** A small drawing before a sentence that says the same in words; nothing for a screen reader. */
export interface StateIcon {
  /** A tick where all is met, a wedge where something is short, nothing where nothing is asked. */
  update(state: ItemState): void;
}

const shapes: Record<ItemState, string> = {
  met: 'M3 8.5 6.5 12 13 4.5',
  short: 'M2.5 4.5h11L8 13.5z',
  none: '',
};

/** Makes the icon as the last child of `parent`. */
export function appendStateIcon(parent: Element): StateIcon {
  const svg = document.createElementNS(namespace, 'svg');
  svg.setAttribute('viewBox', '0 0 16 16');
  svg.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(namespace, 'path');
  svg.append(path);
  parent.append(svg);
  let shown: ItemState | undefined;
  return {
    update(state) {
      if (state === shown) return;
      shown = state;
      svg.setAttribute('class', `state-icon ${state}`);
      path.setAttribute('d', shapes[state]);
    },
  };
}

const namespace = 'http://www.w3.org/2000/svg';
