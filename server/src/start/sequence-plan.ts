/** A sequence that is to be written as a file; every text as it will stand there. */
export interface SequencePlan {
  readonly title?: string;
  /** Targets for all lessons, by their keys in the file. */
  readonly targets?: Readonly<Record<string, number>>;
  /** Other keys of the whole file with their values: `cot and caught`, `series`, `pronunciations`. */
  readonly settings?: Readonly<Record<string, string | Readonly<Record<string, string>>>>;
  /** Lines to stand at the head as comments. */
  readonly remarks?: readonly string[];
  readonly lessons: readonly LessonPlan[];
}

/** A lesson that is to be written; a list that is absent is left out, an empty one is written as `[]`. */
export interface LessonPlan {
  readonly name: string;
  readonly title?: string;
  /** Each as `ai as in rain`. */
  readonly spellings?: readonly string[];
  readonly highFrequencyWords?: readonly string[];
  readonly endings?: readonly string[];
  readonly blends?: readonly string[];
  readonly syllables?: number;
  readonly punctuation?: readonly string[];
  readonly targets?: Readonly<Record<string, number>>;
  /** Lines to stand in front of the lesson as comments. */
  readonly remarks?: readonly string[];
}
