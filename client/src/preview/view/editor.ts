import type { PreviewMessage, PreviewShow, PrintChoice } from '../messages.ts';

interface SavedState {
  readonly choice?: PrintChoice;
  /** Counted from 0. */
  readonly page?: number;
  readonly isWide?: boolean;
}

declare function acquireVsCodeApi(): {
  postMessage(message: PreviewMessage): void;
  getState(): unknown;
  setState(state: SavedState): void;
};

const editor = acquireVsCodeApi();

/** Tells the extension something. */
export function post(message: PreviewMessage): void {
  editor.postMessage(message);
}

/** What outlives the view's being hidden. */
export function savedState(): SavedState {
  const state = editor.getState();
  return typeof state === 'object' && state !== null ? state : {};
}

/** Keeps some of it; the rest stays. */
export function saveState(state: SavedState): void {
  editor.setState({ ...savedState(), ...state });
}

/** Listens to the extension. */
export function listen(show: (message: PreviewShow) => void): void {
  window.addEventListener('message', ({ data }: MessageEvent<PreviewShow>) => show(data));
}
