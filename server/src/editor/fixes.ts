import { breakPageAt } from '../fixes/break-page.ts';
import { declareName, declareStoryWord, removeStoryWord } from '../fixes/declare.ts';
import { lessonHint } from '../fixes/lesson-hint.ts';
import { placesForWord } from '../fixes/places-for-word.ts';
import { removeKey } from '../fixes/remove-key.ts';
import { replacementsFor } from '../fixes/replacements.ts';
import { splitsOf } from '../fixes/split-sentence.ts';
import { takeIndentAway } from '../fixes/take-indent-away.ts';
import { teachWord } from '../fixes/teach.ts';
import type { TextEdit } from '../fixes/text-edit.ts';
import type { Phonics } from '../phonics/phonics.ts';
import { declarationsOf } from '../review/declarations.ts';
import type { Finding, Review } from '../review/review.ts';
import { type ReviewContext, reviewContext } from '../review/review-context.ts';
import { reviewWord } from '../review/review-word.ts';
import { lessonLabel } from '../review/wording.ts';
import { frontMatterKeys } from '../story/front-matter-block.ts';
import type { Story, Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { nearestName } from '../text/nearest-name.ts';
import { shifted } from '../text/span.ts';
import type { Thesaurus } from '../words/thesaurus.ts';
import { formsOf } from '../words/word-forms.ts';
import type { SequenceFile } from './sequence-files.ts';

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

interface Reviewed {
  readonly review: Review;
  readonly sequenceFile: SequenceFile;
}

interface Knowledge {
  readonly phonics: Phonics;
  readonly thesaurus: Thesaurus | undefined;
}

/** The ways to mend a finding of a review, the likeliest to be wanted first; none for most rules. */
export function fixesFor(finding: Finding, reviewed: Reviewed, knowledge: Knowledge): readonly Fix[] {
  switch (finding.rule) {
    case 'untaught-spelling':
    case 'untaught-form':
    case 'guessed-reading':
      return wordFixes(finding, reviewed, knowledge);
    case 'long-sentence':
      return sentenceFixes(finding, reviewed, knowledge);
    case 'missing-high-frequency-word':
      return highFrequencyFixes(finding, reviewed, knowledge);
    case 'unused-story-word':
      return storyWordFixes(finding, reviewed);
    case 'long-page':
      return pageFixes(finding, reviewed);
    case 'untaught-punctuation':
      return markFixes(finding, reviewed);
    case 'front-matter-problem':
      return keyFixes(finding, reviewed);
    default:
      return [];
  }
}

/** The ways to mend a finding of a file that is not reviewed: what would make it a story. */
export function unreviewedFixesFor({ span }: Finding, story: Story | undefined): readonly Fix[] {
  const hint = story && lessonHint(story);
  if (hint === undefined || hint.span.start !== span.start) return [];
  return [{ title: hint.title, file: 'story', edits: hint.edits, isSure: true }];
}

/** A word among its neighbours, with the text their spans refer to and where that begins in the file. */
interface WordPlace {
  readonly words: readonly Word[];
  readonly index: number;
  readonly source: string;
  readonly start: number;
}

function wordFixes(finding: Finding, reviewed: Reviewed, knowledge: Knowledge): readonly Fix[] {
  const { review } = reviewed;
  const place = placeOf(review, finding);
  const word = place?.words[place.index];
  if (place === undefined || word === undefined) return [];
  const context = reviewContext(review.taught, knowledge.phonics, review.story.frontMatter);
  const asName = nameFix(word, review);
  const isName = finding.rule === 'guessed-reading' || !word.opensSentence;
  return [
    ...(asName !== undefined && isName ? [asName] : []),
    ...replacementFixes(place, word, context, knowledge.thesaurus),
    ...storyWordFix(word, review, knowledge.phonics),
    ...(asName !== undefined && !isName ? [asName] : []),
    ...teachFix(word, reviewed, finding),
  ];
}

function replacementFixes(
  place: WordPlace,
  word: Word,
  context: ReviewContext,
  thesaurus: Thesaurus | undefined,
): readonly Fix[] {
  if (thesaurus === undefined) return [];
  const { words, index, source, start } = place;
  return replacementsFor({ words, index, source, context, thesaurus }).map(({ text, article }) => {
    const edits: TextEdit[] = [{ span: shifted(word.span, start), text }];
    const before = words[index - 1];
    if (article === undefined || before === undefined) {
      return { title: `Replace with “${text}”`, file: 'story', edits, isSure: false };
    }
    edits.unshift({ span: shifted(before.span, start), text: article });
    return { title: `Replace with “${article} ${text}”`, file: 'story', edits, isSure: false };
  });
}

function storyWordFix(word: Word, { story, taught }: Review, phonics: Phonics): readonly Fix[] {
  const declared = storyWordFor(word, phonics);
  const edit = declareStoryWord(story, declared);
  if (edit === undefined) return [];
  const count = story.frontMatter.storyWords.length + 1;
  const most = taught.targets.storyWords;
  const room = count > most ? `more than the ${most} wanted` : `${count} of at most ${most}`;
  return [
    {
      title: `Declare “${declared}” a story word (${room})`,
      file: 'story',
      edits: [edit],
      isSure: false,
      caret: meaningIn(edit),
    },
  ];
}

/** Where the meaning of a declared word is to be written: behind its colon, or between the quotation marks. */
function meaningIn({ span, text }: TextEdit): number {
  const quotes = text.lastIndexOf('""');
  return span.start + (quotes === -1 ? text.trimEnd().length : quotes + 1);
}

/** What to declare: *ponds* and *pond’s* are covered by *pond*, *jumped* by itself alone. */
function storyWordFor({ text, opensSentence, form }: Word, phonics: Phonics): string {
  const owner = form === 'word' ? text.replace(/['\u2019\u02bc]s?$/, '') : text;
  const isCapitalAlone = owner === owner.toUpperCase() && owner.length > 1;
  const plain = opensSentence || isCapitalAlone ? owner.toLowerCase() : owner;
  const inflection = phonics.readingsOf(plain)[0]?.inflection;
  const isPlural = inflection?.ending === 's' || inflection?.ending === 'es';
  return isPlural && plain === plain.toLowerCase() && phonics.isListed(inflection.base)
    ? inflection.base
    : plain;
}

function nameFix({ text, form }: Word, { story }: Review): Fix | undefined {
  const name = text.replace(/['\u2019\u02bc]s?$/, '');
  const first = name.charAt(0);
  if (form === 'number' || first === first.toLowerCase()) return undefined;
  const edit = declareName(story, name);
  return edit && { title: `Declare “${name}” a name`, file: 'story', edits: [edit], isSure: false };
}

function teachFix(word: Word, { review, sequenceFile }: Reviewed, { rule }: Finding): readonly Fix[] {
  if (word.form !== 'word' || rule === 'guessed-reading') return [];
  const { taught } = review;
  const { text, opensSentence } = word;
  const folded = foldedWord(text);
  const isListed = taught.sequence.lessons.some(({ highFrequencyWords }) =>
    highFrequencyWords.some(({ value }) => foldedWord(value) === folded),
  );
  // A later lesson has it: whether to move it there or here is more than a quick fix.
  if (isListed) return [];
  const taughtWord = opensSentence || text === text.toUpperCase() ? folded : text;
  const edit = teachWord(sequenceFile.snapshot.document.getText(), taught.lesson, taughtWord);
  if (edit === undefined) return [];
  return [
    {
      title: `Teach “${taughtWord}” in ${lessonLabel(taught.lesson)} as a high-frequency word`,
      file: 'sequence',
      edits: [edit],
      isSure: false,
    },
  ];
}

function sentenceFixes(
  finding: Finding,
  { review }: Reviewed,
  { phonics, thesaurus }: Knowledge,
): readonly Fix[] {
  if (thesaurus === undefined) return [];
  const { taught, story } = review;
  const declared = declarationsOf(story.frontMatter);
  const context = reviewContext(taught, phonics, story.frontMatter);
  for (const { placed } of review.pages) {
    const { page, start } = placed;
    if (finding.span.start < start || finding.span.start >= start + page.source.length) continue;
    const sentence = page.sentences.find(
      ({ span }) => span.start + start <= finding.span.start && finding.span.end <= span.end + start,
    );
    if (sentence === undefined) continue;
    const splits = splitsOf({
      sentence,
      source: page.source,
      grammar: {
        words: sentence.words.map(({ text }) => text),
        formsOf: (word) => formsOf(word, thesaurus, phonics),
        isName: (word) => declared.isName(word),
      },
      canRead: (text) => canRead(text, context),
    });
    return splits.map(({ edit, halves, words }, index) => ({
      title: `Split: ${halves.join(' ')}`,
      file: 'story',
      edits: [{ span: shifted(edit.span, start), text: edit.text }],
      isSure: index === 0 && Math.max(...words) <= taught.targets.sentence,
    }));
  }
  return [];
}

function canRead(text: string, context: ReviewContext): boolean {
  const word: Word = { text, span: { start: 0, end: text.length }, form: 'word', opensSentence: true };
  return reviewWord(word, { words: [word], index: 0 }, context).kind !== 'not-taught';
}

/** Places where the missing word could stand for another one. The finding's message names the word. */
function highFrequencyFixes(
  { message }: Finding,
  { review }: Reviewed,
  { phonics, thesaurus }: Knowledge,
): readonly Fix[] {
  const missing = review.newWordUses.find(({ word }) => message.includes(`“${word}”`));
  if (thesaurus === undefined || missing === undefined) return [];
  const context = reviewContext(review.taught, phonics, review.story.frontMatter);
  return placesForWord(missing.word, review, context, thesaurus).map(({ original, page, edits }) => ({
    title: `Use “${missing.word}” for “${original}” on page ${page}`,
    file: 'story',
    edits,
    isSure: false,
  }));
}

function storyWordFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { story } = review;
  const word = story.frontMatter.storyWords.find((each) => each.span.start === span.start);
  const edit = word && removeStoryWord(story, word);
  if (word === undefined || edit === undefined) return [];
  return [{ title: `Remove the story word “${word.word}”`, file: 'story', edits: [edit], isSure: true }];
}

function pageFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { pages, text } = review.story;
  const placed = [...pages].reverse().find(({ start }) => start <= span.start);
  const edit = placed && breakPageAt(text, placed, span.start);
  return edit === undefined
    ? []
    : [{ title: 'Begin a new page here', file: 'story', edits: [edit], isSure: false }];
}

/** A mark that only adds force may become a full stop; a question stays one. */
function markFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const mark = review.story.text.slice(span.start, span.end);
  if (mark !== '!' && mark !== '\u2026' && mark !== '...') return [];
  const edits: readonly TextEdit[] = [{ span, text: '.' }];
  return [{ title: `Write a full stop for “${mark}”`, file: 'story', edits, isSure: false }];
}

/** A key that a story does not have, or lines that are indented so far that they are code. */
function keyFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { text, frontMatter, bodyStart } = review.story;
  if (span.start >= bodyStart) {
    const edits = takeIndentAway(text, span.start);
    return edits.length === 0 ? [] : [{ title: 'Take the indent away', file: 'story', edits, isSure: true }];
  }
  const key = text.slice(span.start, span.end);
  if (span.end > frontMatter.span.end || frontMatterKeys.some((known) => known === key)) return [];
  const edit = removeKey(text, span);
  const near = nearestName(key, frontMatterKeys);
  const meant = text.charAt(span.end) === ':' ? near : undefined;
  return [
    ...(meant === undefined
      ? []
      : [
          {
            title: `Write “${meant}”`,
            file: 'story' as const,
            edits: [{ span, text: meant }],
            isSure: false,
          },
        ]),
    ...(edit === undefined
      ? []
      : [{ title: `Remove “${key}”`, file: 'story' as const, edits: [edit], isSure: false }]),
  ];
}

function placeOf({ pages, title, story }: Review, { span }: Finding): WordPlace | undefined {
  const headingWords = title.map(({ word }) => word);
  const inTitle = headingWords.findIndex((word) => word.span.start === span.start);
  if (inTitle !== -1) return { words: headingWords, index: inTitle, source: story.text, start: 0 };
  for (const { placed } of pages) {
    const { page, start } = placed;
    if (span.start < start || span.start >= start + page.source.length) continue;
    for (const { words } of page.sentences) {
      const index = words.findIndex((word) => word.span.start + start === span.start);
      if (index !== -1) return { words, index, source: page.source, start };
    }
  }
  return undefined;
}
