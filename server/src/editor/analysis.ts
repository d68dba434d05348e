import type { Finding, Review } from '../review/review.ts';
import type { Story } from '../story/story.ts';
import type { Snapshot } from './documents.ts';
import type { GaugeParams } from './protocol.ts';
import type { SequenceFile } from './sequence-files.ts';

/** Why a document has no review. */
export type NoReview = Extract<GaugeParams, { reason: string }>['reason'];

/** What a document turned out to be. */
export type Content =
  | { readonly kind: 'reviewed'; readonly review: Review; readonly sequenceFile: SequenceFile }
  | {
      readonly kind: 'not-reviewed';
      readonly reason: NoReview;
      /** The reason as a sentence for the writer. */
      readonly message: string;
      /** The story as far as it was read; absent when the file was too large to be. */
      readonly story?: Story;
      /** The sequence that was found, where the lesson is what is missing. */
      readonly sequenceFile?: SequenceFile;
      readonly findings: readonly Finding[];
    }
  /** A sequence; without its file when it was too large to be read. */
  | {
      readonly kind: 'sequence';
      readonly sequenceFile?: SequenceFile;
      readonly findings: readonly Finding[];
    };

/** What follows from a document's text and its sequence. */
export interface Outcome {
  readonly content: Content;
  /** The sequence file its front matter names, canonical. */
  readonly named?: string;
}

/** What the server knows of one version of an open document under one state of its sequence. Immutable. */
export interface Analysis extends Outcome {
  /** Different for every analysis of a server's life. */
  readonly id: number;
  readonly snapshot: Snapshot;
}

/** What to show at the document, spans absolute, in the order of the text. */
export function findingsOf(content: Content): readonly Finding[] {
  return content.kind === 'reviewed' ? content.review.findings : content.findings;
}

/** The story of a document, when it is one that was read. */
export function storyOf(content: Content): Story | undefined {
  if (content.kind === 'reviewed') return content.review.story;
  return content.kind === 'not-reviewed' ? content.story : undefined;
}
