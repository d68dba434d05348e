import { declareName, declareStoryWord } from '../../fixes/declare.ts';
import { replacementsFor } from '../../fixes/replacements.ts';
import { teachWord } from '../../fixes/teach.ts';
import type { TextEdit } from '../../fixes/text-edit.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import type { Finding, Review } from '../../review/review.ts';
import { type ReviewContext, reviewContext } from '../../review/review-context.ts';
import { lessonLabel } from '../../review/wording.ts';
import type { Word } from '../../story/story.ts';
import { foldedWord } from '../../text/folded-word.ts';
import { shifted } from '../../text/span.ts';
import type { Thesaurus } from '../../words/thesaurus.ts';
import type { Fix, Knowledge, Reviewed } from './fix.ts';

/** For a word the children cannot read, or that is in no list: another word, a declaration, a lesson that teaches it. */
export function wordFixes(finding: Finding, reviewed: Reviewed, knowledge: Knowledge): readonly Fix[] {
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

/** A word among its neighbours, with the text their spans refer to and where that begins in the file. */
interface WordPlace {
  readonly words: readonly Word[];
  readonly index: number;
  readonly source: string;
  readonly start: number;
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
  const { edit: roomy, caret } = withRoomForMeaning(edit);
  const count = story.frontMatter.storyWords.length + 1;
  const most = taught.targets.storyWords;
  const room = count > most ? `more than the ${most} wanted` : `${count} of at most ${most}`;
  return [
    {
      title: `Declare “${declared}” a story word (${room})`,
      file: 'story',
      edits: [roomy],
      isSure: false,
      caret,
    },
  ];
}

/** The declaration with a space behind its colon, and where the meaning is to be written: there, or between quotation marks. */
function withRoomForMeaning({ span, text }: TextEdit): { readonly edit: TextEdit; readonly caret: number } {
  const quotes = text.lastIndexOf('""');
  if (quotes !== -1) return { edit: { span, text }, caret: span.start + quotes + 1 };
  const end = text.trimEnd().length;
  const roomy = `${text.slice(0, end)} ${text.slice(end)}`;
  return { edit: { span, text: roomy }, caret: span.start + end + 1 };
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
