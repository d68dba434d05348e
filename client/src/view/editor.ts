import type { ViewMessage } from '../gauge/messages.ts';

interface EditorApi {
  postMessage(message: ViewMessage): void;
  getState(): unknown;
  setState(state: SavedState): void;
}

/** What outlives the view's being hidden. */
export interface SavedState {
  /** In CSS pixels. */
  readonly scroll: number;
}

declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();

/** Tells the extension something. */
export function post(message: ViewMessage): void {
  editor.postMessage(message);
}

/** How far the view was scrolled when it was last seen; 0 at first. */
export function savedScroll(): number {
  const state = editor.getState() as Partial<SavedState> | undefined;
  return typeof state?.scroll === 'number' ? state.scroll : 0;
}

/** Keeps how far the view is scrolled. */
export function saveScroll(scroll: number): void {
  editor.setState({ scroll });
}
