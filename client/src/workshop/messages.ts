/** The views of the workshop. */
export type WorkshopKind = 'words' | 'chain' | 'fit';

/** View to extension. */
export type WorkshopMessage =
  /** The view's script runs. */
  | { readonly type: 'ready' }
  /** What the form asks for; `id` comes back with the answer. */
  | { readonly type: 'ask'; readonly id: number; readonly wish: Readonly<Record<string, unknown>> }
  /** Write a word at the caret of the story. */
  | { readonly type: 'insert-word'; readonly word: string }
  /** Write a note for the teacher below the caret's line. */
  | { readonly type: 'insert-note'; readonly text: string }
  /** Give the focus back to the text. */
  | { readonly type: 'editor' };

/** Extension to view. */
export type WorkshopShow =
  /** The text that the view is about is another, or has changed; the name is empty when there is none. */
  | { readonly type: 'text'; readonly name: string }
  /** The answer of the server. */
  | { readonly type: 'answer'; readonly id: number; readonly answer: unknown };
