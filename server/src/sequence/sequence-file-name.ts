/** The name a sequence is found by. */
export const sequenceFileName = 'sequence.yaml';

/** Names that a writer may give the file by mistake; under none of them is it found. */
export const mistakenSequenceNames: readonly string[] = [
  'sequence.yml',
  'Sequence.yaml',
  'Sequence.yml',
  'sequences.yaml',
  'sequence.yaml.txt',
];

/** What to do about a file with a mistaken name, without a stop at its end. */
export function mistakenNameHint(found: string): string {
  return `There is a file “${found}”; rename it to ${sequenceFileName}`;
}
