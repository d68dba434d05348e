import { readFileSync } from 'node:fs';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import type { Taught } from '../../server/src/sequence/taught.ts';
import { type Teaching, teachingOf } from '../../server/src/sequence/teaching.ts';
import { packagePhonics } from './package-phonics.ts';

/** The sample sequence with the phonics of the package. */
export const sampleTeaching: Teaching = teachingOf(
  readSequence(readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8')),
  packagePhonics,
);

/** What is taught by the end of a lesson of the sample sequence. */
export function sampleLesson(name: string): Taught {
  const taught = sampleTeaching.taughtAt(name);
  if (taught === undefined) throw new Error(`The sample sequence has no lesson ${name}.`);
  return taught;
}
