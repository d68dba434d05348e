import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import { lessonsOf } from './lessons.ts';
import { reportOf } from './report.ts';
import { sequenceOf, seriesOf } from './series.ts';

// `npx tsx tests/primer-1881/make-series.ts [FOLDER]` writes the kept report.md and sequence.yaml anew, and into FOLDER, by
// itself the git-ignored .cache/primer-1881, the sequence and the 52 stories under each view, for `check` to read.
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const data = readFileSync(here('lessons.jsonl'), 'utf8');
const lessons = lessonsOf(data);
const phonics = loadPhonics();
writeFileSync(here('report.md'), reportOf(data, phonics));
writeFileSync(here('sequence.yaml'), sequenceOf(lessons, 'sounds and words', phonics));

const target = process.argv[2] ?? here('../../.cache/primer-1881');
for (const [folder, view] of [
  ['sounds', 'sounds'],
  ['sounds-and-words', 'sounds and words'],
] as const) {
  mkdirSync(join(target, folder), { recursive: true });
  for (const [name, text] of seriesOf(lessons, view, phonics))
    writeFileSync(join(target, folder, name), text);
}
