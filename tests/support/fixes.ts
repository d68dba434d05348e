import { readFileSync } from 'node:fs';
import { type Replacement, replacementsFor } from '../../server/src/fixes/replacements.ts';
import { type SentenceSplit, splitsOf } from '../../server/src/fixes/split-sentence.ts';
import { edited } from '../../server/src/fixes/text-edit.ts';
import { declarationsOf } from '../../server/src/review/declarations.ts';
import { reviewContext } from '../../server/src/review/review-context.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import type { Taught } from '../../server/src/sequence/taught.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import type { Sentence } from '../../server/src/story/story.ts';
import { openThesaurus, type Thesaurus } from '../../server/src/words/thesaurus.ts';
import { formsOf } from '../../server/src/words/word-forms.ts';
import { packagePhonics } from './package-phonics.ts';

/** The thesaurus of the package. */
export const packageThesaurus: Thesaurus = openThesaurus(
  readFileSync(new URL('../../server/generated/meanings.bin', import.meta.url)),
);

const sampleTeaching = teachingOf(
  readSequence(readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8')),
  packagePhonics,
);

/** What the sample sequence has taught by the end of a lesson. */
export function sampleTaught(lesson: string): Taught {
  const taught = sampleTeaching.taughtAt(lesson);
  if (taught === undefined) throw new Error(`The sample sequence has no lesson ${lesson}.`);
  return taught;
}

/** The names that the stories of these tests declare. */
const names = '[Kim, Tam, Nod]';

/** What is offered for the word in brackets, the closest first: `Kim [jumped] on a rug.` at a lesson of the samples. */
export function offersFor(marked: string, lesson: string): readonly Replacement[] {
  const { sentence, source, start, context } = read(marked.replace(/[[\]]/g, ''), lesson);
  const at = start + marked.indexOf('[');
  const index = sentence.words.findIndex(({ span }) => span.start === at);
  if (index === -1) throw new Error(`No word begins at the bracket in “${marked}”.`);
  return replacementsFor({ words: sentence.words, index, source, context, thesaurus: packageThesaurus });
}

/** The text with an offer put in the brackets, its article changed with it. */
export function put(marked: string, { text, article }: Replacement): string {
  const before = marked.slice(0, marked.indexOf('['));
  const after = marked.slice(marked.indexOf(']') + 1);
  return (article === undefined ? before : before.replace(/\S+(\s+)$/, `${article}$1`)) + text + after;
}

/** What a long sentence becomes, each way it can be split, the most even first. */
export function splitsAt(text: string, lesson = '36'): readonly string[] {
  const { sentence, source, context } = read(text, lesson);
  const declared = declarationsOf(readStory(story(text, lesson)).frontMatter);
  const splits: readonly SentenceSplit[] = splitsOf({
    sentence,
    source,
    grammar: {
      words: sentence.words.map((word) => word.text),
      formsOf: (word) => formsOf(word, packageThesaurus, context.phonics),
      isName: (word) => declared.isName(word),
    },
    canRead: () => true,
  });
  return splits.map((split) => {
    const after = edited(source, [split.edit]).trim();
    if (after.replace(/\s+/g, ' ') !== split.halves.join(' '))
      throw new Error(`${after} is not ${split.halves.join(' ')}`);
    return after;
  });
}

function story(text: string, lesson: string): string {
  return `---\nlesson: "${lesson}"\nnames: ${names}\n---\n${text}\n`;
}

function read(text: string, lesson: string) {
  const read = readStory(story(text, lesson));
  const page = read.pages[0]?.page;
  const sentence: Sentence | undefined = page?.sentences.at(-1);
  if (page === undefined || sentence === undefined) throw new Error('There is no sentence.');
  const taught = sampleTaught(lesson);
  const context = reviewContext(taught, packagePhonics, read.frontMatter);
  return { sentence, source: page.source, start: page.source.indexOf(text), context };
}
