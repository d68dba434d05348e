import { readFileSync, writeFileSync } from 'node:fs';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import { reportOf } from './report.ts';

/** Writes `report.md` anew: `npx tsx tests/primer-1881/make-report.ts`. */
const lessons = readFileSync(new URL('lessons.jsonl', import.meta.url), 'utf8');
writeFileSync(new URL('report.md', import.meta.url), reportOf(lessons, loadPhonics()));
