import type { WordList } from '../phonics/word-list.ts';
import { declarationsOf } from '../review/declarations.ts';
import type { Review, ReviewedWord, RuleId } from '../review/review.ts';
import { failsStory } from '../review/severity.ts';
import type { TaughtSpelling } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { storyTitle } from '../story/story-title.ts';
import { foldedWord } from '../text/folded-word.ts';
import { shifted } from '../text/span.ts';
import { isFamiliarWord, readabilityOf } from './readability.ts';
import type { FailingRule, Readability, SentenceFigures, StoryCoverage, WordInStory } from './series.ts';

/** Reads what a story gives to its series off its review. `path` is how the host names the story. */
export function storyCoverage(path: string, review: Review, words: WordList): StoryCoverage {
  const { story, taught, counts, readable, decodable, target, passes } = review;
  const uses = usesOf(review);
  const sentences = sentenceFigures(review);
  return {
    path,
    title: storyTitle(story) ?? path,
    lesson: taught.lesson,
    counts,
    readable,
    decodable,
    target,
    passes,
    failing: failingRules(review),
    pages: story.pages.filter(({ page }) => page.sentences.length > 0).length,
    sentences,
    readability: readabilityIn(uses, sentences, counts.words, words),
    words: uses.words,
    spellings: uses.spellings,
    highFrequencyWords: uses.highFrequencyWords,
  };
}

/**
 * The same coverage along another version of the sequence, in which children have been taught the same by the story's lesson
 * (`lessonKeys` tells): lessons and spellings up to it are the same by their places.
 */
export function coverageIn(teaching: Teaching, coverage: StoryCoverage, before: Teaching): StoryCoverage {
  const spellings = new Map<TaughtSpelling, number>();
  for (const [spelling, uses] of coverage.spellings) {
    const same = teaching.spellings[before.spellings.indexOf(spelling)];
    if (same !== undefined) spellings.set(same, uses);
  }
  const lesson = teaching.sequence.lessons[coverage.lesson.index] ?? coverage.lesson;
  return { ...coverage, lesson, spellings };
}

/** A high-frequency word as its uses are counted: *Mr.* and *Mr* are one word, in any capitals. */
export function highFrequencyKey(word: string): string {
  const folded = foldedWord(word);
  return folded.endsWith('.') ? folded.slice(0, -1) : folded;
}

interface Uses {
  readonly words: readonly WordInStory[];
  readonly spellings: ReadonlyMap<TaughtSpelling, number>;
  readonly highFrequencyWords: ReadonlyMap<string, number>;
  readonly syllables: number;
}

function usesOf({ pages, taught, story }: Review): Uses {
  const { isName } = declarationsOf(story.frontMatter);
  const words = new Map<string, { -readonly [Key in keyof WordInStory]: WordInStory[Key] }>();
  const spellings = new Map<TaughtSpelling, number>();
  const highFrequencyWords = new Map<string, number>();
  let syllables = 0;
  for (const { placed, reviewed } of pages) {
    for (const { word, kind, reading } of reviewed.words) {
      const key = foldedWord(word.text);
      const known = words.get(key);
      if (known !== undefined) known.count++;
      else {
        const span = shifted(word.span, placed.start);
        const read = reading === undefined ? {} : { reading };
        const { text } = word;
        words.set(key, { word: key, text, count: 1, kind, isName: isName(text), ...read, span });
      }
      syllables += syllablesOf(reading);
      const listed = highFrequencyKey(key);
      if (taught.highFrequencyLesson(listed) ?? taught.highFrequencyLesson(`${listed}.`)) {
        highFrequencyWords.set(listed, (highFrequencyWords.get(listed) ?? 0) + 1);
      }
      if (kind !== 'decodable' || reading === undefined) continue;
      for (const spelling of new Set(taught.judge(reading).uses)) {
        spellings.set(spelling, (spellings.get(spelling) ?? 0) + 1);
      }
    }
  }
  return { words: [...words.values()], spellings, highFrequencyWords, syllables };
}

/** Digits and abbreviations, which have no reading, count as one syllable. */
function syllablesOf(reading: ReviewedWord['reading']): number {
  return Math.max(1, reading?.syllables.length ?? 1);
}

function sentenceFigures({ story, counts }: Review): SentenceFigures {
  let count = 0;
  let longest = 0;
  for (const { page } of story.pages) {
    count += page.sentences.length;
    for (const { words } of page.sentences) longest = Math.max(longest, words.length);
  }
  return { count, mean: count === 0 ? 0 : counts.words / count, longest };
}

function readabilityIn(uses: Uses, sentences: SentenceFigures, words: number, list: WordList): Readability {
  const unfamiliar = uses.words.filter(
    ({ word, kind, reading }) => kind !== 'name' && !isFamiliarWord(word, reading, list),
  );
  return readabilityOf({
    sentences: sentences.count,
    words,
    syllables: uses.syllables,
    unfamiliarWords: unfamiliar.length,
  });
}

function failingRules({ findings }: Review): readonly FailingRule[] {
  const failing = new Map<RuleId, FailingRule>();
  for (const finding of findings) {
    if (!failsStory(finding)) continue;
    const { rule, message, span } = finding;
    const known = failing.get(rule);
    failing.set(
      rule,
      known === undefined ? { rule, count: 1, message, span } : { ...known, count: known.count + 1 },
    );
  }
  return [...failing.values()];
}
