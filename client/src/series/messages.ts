import type { SeriesAnswer, SeriesPlace } from '../../../server/src/editor/series/protocol.ts';

/** View to extension. */
export type SeriesMessage =
  /** The view's script runs. */
  | { readonly type: 'ready' }
  /** Show the series of this sequence. */
  | { readonly type: 'choose'; readonly uri: string }
  /** Open a file of the series at a place. */
  | { readonly type: 'open'; readonly uri: string; readonly place: SeriesPlace }
  /** Save a report. */
  | { readonly type: 'save' }
  /** Give the focus back to the text. */
  | { readonly type: 'editor' };

/** Extension to view. */
export interface SeriesShow {
  readonly type: 'series';
  /** Null when no story follows a sequence. */
  readonly answer: SeriesAnswer | null;
  /** Why nothing is shown; empty when there is no reason but that. */
  readonly message: string;
}
