/** Client to server: the sequence that holds for a file or folder, open or not. */
export const sequenceRequest = 'battledore/sequence';
/** Whose sequence is asked for. */
export interface SequenceParams {
  /** A file; it need not exist. */
  readonly uri: string;
}
/** The nearest sequence beside the file or above it. */
export interface SequenceAnswer {
  readonly lessons: readonly { readonly name: string; readonly title?: string }[];
  /** The lessons as CSV, with its byte-order mark. */
  readonly csv: string;
}
