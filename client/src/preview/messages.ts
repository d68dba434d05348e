import type { PreviewAnswer, PrintParams } from '../../../server/src/editor/workshop/protocol.ts';

/** Which document, how, on which paper. */
export type PrintChoice = Pick<PrintParams, 'material' | 'layout' | 'paper'>;

/** All practice pages: what the editor prints and shows. */
export const allParts: PrintParams['parts'] = ['hunt', 'boxes', 'chain', 'sentences'];

/** View to extension. */
export type PreviewMessage =
  /** The view's script runs; with the choice it was left with, if it was open before. */
  | { readonly type: 'ready'; readonly choice?: PrintChoice }
  /** Show this. */
  | { readonly type: 'choose'; readonly choice: PrintChoice }
  /** Print what is shown. */
  | { readonly type: 'print' }
  /** Show a line of the story, counted from 1. */
  | { readonly type: 'reveal'; readonly line: number }
  /** Give the focus back to the text. */
  | { readonly type: 'editor' };

/** Extension to view. */
export type PreviewShow =
  /** The fonts of the pages, by the names that the pages call them. */
  | { readonly type: 'fonts'; readonly fonts: Readonly<Record<string, Uint8Array>> }
  /** The pages as they are now. */
  | {
      readonly type: 'pages';
      /** The file's name. */
      readonly name: string;
      readonly choice: PrintChoice;
      readonly answer: PreviewAnswer;
    }
  /** There is nothing to show, and why. */
  | {
      readonly type: 'nothing';
      readonly choice: PrintChoice;
      readonly message: string;
      /** True while the story that was shown is in a state that cannot be read: its pages stay. */
      readonly keepsPages: boolean;
    };
