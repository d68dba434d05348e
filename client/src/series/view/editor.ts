import type { SeriesMessage, SeriesShow } from '../messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: SeriesMessage): void };

const editor = acquireVsCodeApi();

/** Tells the extension something. */
export function post(message: SeriesMessage): void {
  editor.postMessage(message);
}

/** Calls `show` with each series that comes, and asks for the first. */
export function listen(show: (message: SeriesShow) => void): void {
  let waiting: SeriesShow | undefined;
  window.addEventListener('message', ({ data }: MessageEvent<SeriesShow>) => {
    if (data?.type !== 'series') return;
    // Several may come within one frame; only the last is drawn.
    if (waiting === undefined) {
      requestAnimationFrame(() => {
        const last = waiting;
        waiting = undefined;
        if (last !== undefined) show(last);
      });
    }
    waiting = data;
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') post({ type: 'editor' });
  });
  post({ type: 'ready' });
}
