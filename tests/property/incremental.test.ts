import fc from 'fast-check';
import { test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { editScript, playScript } from './edit-scripts.ts';

/** Each has up to six steps, and after each step the whole review is compared. */
const scripts = 10_000;

test(`after each step of ${scripts} edit scripts the review equals one from scratch`, async () => {
  await fc.assert(
    fc.asyncProperty(editScript, (script) => playScript(script, packagePhonics)),
    { numRuns: scripts },
  );
}, 300_000);
