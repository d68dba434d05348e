import type { TextEdit } from '../../fixes/text-edit.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import type { Review } from '../../review/review.ts';
import type { Thesaurus } from '../../words/thesaurus.ts';
import type { SequenceFile } from '../sequence-files.ts';

/** A way to mend a finding. */
export interface Fix {
  readonly title: string;
  /** The file its edits are for. */
  readonly file: 'story' | 'sequence';
  readonly edits: readonly TextEdit[];
  /** True when it is right beyond doubt and mends the finding. */
  readonly isSure: boolean;
  /** Where the writer goes on once its one edit is made; an offset of the changed file. */
  readonly caret?: number;
}

/** A story as it was reviewed, with the sequence it rests on. */
export interface Reviewed {
  readonly review: Review;
  readonly sequenceFile: SequenceFile;
}

/** What fixes are found with. */
export interface Knowledge {
  readonly phonics: Phonics;
  readonly thesaurus: Thesaurus | undefined;
}
