/**
 * Makes the buttons in an element one stop of the Tab key; the arrow keys, Home and End move among them. A gauge has
 * more items than anyone wants to tab through.
 *
 * @returns a function to call after buttons came or went.
 */
export function moveByArrowKeys(container: HTMLElement): () => void {
  container.addEventListener('keydown', (event) => {
    const buttons = buttonsOf(container);
    const focused = document.activeElement;
    if (!(focused instanceof HTMLButtonElement)) return;
    const to = target(event.key, buttons.indexOf(focused), buttons.length);
    if (to === undefined) return;
    event.preventDefault();
    buttons[to]?.focus();
  });
  let stop: EventTarget | null = null;
  const settle = (): void => {
    const buttons = buttonsOf(container);
    if (!buttons.some((button) => button === stop)) stop = buttons[0] ?? null;
    for (const button of buttons) {
      const wanted = button === stop ? 0 : -1;
      if (button.tabIndex !== wanted) button.tabIndex = wanted;
    }
  };
  container.addEventListener('focusin', (event) => {
    stop = event.target;
    settle();
  });
  return settle;
}

function buttonsOf(container: HTMLElement): HTMLButtonElement[] {
  return [...container.querySelectorAll('button')];
}

function target(key: string, from: number, count: number): number | undefined {
  switch (key) {
    case 'ArrowDown':
    case 'ArrowRight':
      return Math.min(from + 1, count - 1);
    case 'ArrowUp':
    case 'ArrowLeft':
      return Math.max(from - 1, 0);
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return undefined;
  }
}
