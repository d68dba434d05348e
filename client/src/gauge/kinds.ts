import type { WordKind } from '../../../server/src/review/review.ts';

/** What the gauge says of one kind of running word. */
export interface KindText {
  readonly kind: WordKind;
  readonly label: string;
  /** True when words of the kind count as readable. */
  readonly readable: boolean;
}

/** The kinds of words in the order in which the gauge draws them: the readable ones first, so that they add up. */
export const kindTexts: readonly KindText[] = [
  { kind: 'decodable', label: 'Decodable', readable: true },
  { kind: 'high-frequency', label: 'High-frequency', readable: true },
  { kind: 'name', label: 'Names', readable: false },
  { kind: 'story-word', label: 'Story words', readable: false },
  { kind: 'not-taught', label: 'Not taught yet', readable: false },
];
