import type { Gauge, ProtocolRange, SequenceProblems } from '../../../server/src/editor/protocol.ts';
import type { AbsenceButton } from './absence.ts';

/** What there is to show: the gauge of a story, or why there is none. */
export type GaugeState =
  | { readonly kind: 'gauge'; readonly gauge: Gauge }
  /** The server is being started, or has not answered for this file yet. */
  | { readonly kind: 'starting' }
  /** The server does not run any more. */
  | { readonly kind: 'stopped' }
  /** No markdown file is open. */
  | { readonly kind: 'no-file' }
  | {
      readonly kind: 'no-gauge';
      readonly reason: 'not-a-story' | 'no-sequence' | 'no-such-lesson' | 'too-large';
      readonly message: string;
      readonly sequenceProblems?: SequenceProblems;
    };

/** Extension to view: draw this. Sent when the view is ready, when it comes into sight and after each change. */
export interface ShowMessage {
  readonly type: 'show';
  readonly state: GaugeState;
}

/**
 * View to extension.
 * - `ready`: the view's script runs and wants its first state.
 * - `reveal`: show a place of the story; `select` selects it, otherwise the caret goes to its start.
 * - `editor`: give the focus back to the text.
 * - all others: the writer asked for these by a button.
 */
export type ViewMessage =
  | {
      readonly type: 'reveal';
      readonly uri: string;
      readonly range: ProtocolRange;
      readonly select: boolean;
    }
  | {
      readonly type: 'ready' | 'editor' | 'lesson' | 'problems' | AbsenceButton;
    };
