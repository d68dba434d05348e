import { isVowel } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Review } from '../review/review.ts';
import { reviewStory } from '../review/review-story.ts';
import type { Taught } from '../sequence/taught.ts';
import { readStory } from '../story/read-story.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { WordFinder } from '../words/find-words.ts';
import {
  actionsAlone,
  loosely,
  noQualities,
  notCounted,
  qualitiesOfSomebody,
  type SlotClass,
  sentencePatterns,
  slotSubjects,
} from './sentence-patterns.ts';

/**
 * Short sentences that together hold what a lesson asks of a story: each new high-frequency word as often as it is to come,
 * each new spelling, and as many words that practise one as are wanted; at least `least` lines. Each is allowed at the
 * lesson by itself. Where no sentence is, a word stands alone.
 */
export function practiceLines(
  taught: Taught,
  finder: WordFinder,
  phonics: Phonics,
  least: number,
): readonly string[] {
  const desk = createDesk(taught, finder, phonics);
  const lines: string[] = [];
  const usesOf = (): Review => desk.reviewOf(lines);
  for (const word of taught.newHighFrequencyWords) {
    const wanted = taught.targets.repeats;
    for (let tries = 0; tries < wanted; tries++) {
      const uses = usesOf().newWordUses.find((each) => each.word === word)?.spans.length ?? 0;
      if (uses >= wanted) break;
      lines.push(desk.sentenceWith(word, lines));
    }
  }
  for (const place of taught.newSpellings.keys()) {
    if ((usesOf().newSpellingUses[place]?.spans.length ?? 0) > 0 || taught.targets.practice === 0) continue;
    const word = desk.wordWith(place);
    if (word !== undefined) lines.push(desk.sentenceFor(word, lines));
  }
  // Each word brings the count on; where no new word can be had, nothing more can be done.
  while (taught.newSpellings.length > 0 && usesOf().practice < taught.targets.practice) {
    const word = desk.nextNew();
    if (word === undefined) break;
    lines.push(desk.sentenceFor(word, lines));
  }
  while (lines.length < least) {
    const word = desk.nextNew() ?? desk.nextKnown();
    if (word === undefined) break;
    lines.push(desk.sentenceFor(word, lines));
  }
  return lines;
}

/** The words of a lesson and the sentences they can stand in. */
function createDesk(taught: Taught, finder: WordFinder, phonics: Phonics) {
  const { newSpellings } = taught;
  const words = (query: Parameters<WordFinder['find']>[1]): readonly string[] =>
    finder.find(taught, { baseFormsOnly: true, ...query }).words.map(({ word }) => word);
  const fresh = finder
    .find(taught, { baseFormsOnly: true, isNew: true, limit: 80 })
    .words.filter((found) => found.newSpellings.length > 0)
    .map(({ word }) => word);
  const known = words({ limit: 400 });
  const clean = new Map<string, boolean>();
  let freshAt = 0;
  let knownAt = 0;
  /** For each kind of slot the words for it, those to practise first; the one that was used last goes to the end. */
  const fillers = new Map<SlotClass, string[]>();

  const reviewOf = (lines: readonly string[]): Review =>
    reviewStory({
      story: readStory(`---\nlesson: ${JSON.stringify(taught.lesson.name)}\n---\n${lines.join('\n')}\n`),
      taught,
      phonics,
    });
  const isAllowed = (sentence: string): boolean => {
    const before = clean.get(sentence);
    if (before !== undefined) return before;
    const { counts, findings } = reviewOf([sentence]);
    const isRead = counts.words > 0 && counts.decodable + counts['high-frequency'] === counts.words;
    const answer = isRead && !findings.some(({ rule }) => sentenceRules.has(rule));
    clean.set(sentence, answer);
    return answer;
  };
  const fits = (word: string, slot: SlotClass): boolean => {
    const all = phonics.words.subjectsOf(word);
    const own = all.filter((subject) => slotSubjects[slot].includes(subject));
    if (own.length === 0) return false;
    switch (slot) {
      case 'v':
        return actionsAlone.has(word);
      case 'f':
        return qualitiesOfSomebody.has(word);
      case 'a':
        return !noQualities.has(word);
      default:
        return (
          (slot !== 'c' || !notCounted.has(word)) &&
          !all.includes('feelings and ways') &&
          (!all.includes('actions') || own.some((subject) => !loosely.has(subject)))
        );
    }
  };
  const fillersFor = (slot: SlotClass): string[] => {
    const found = fillers.get(slot) ?? [...new Set([...fresh, ...known])].filter((word) => fits(word, slot));
    fillers.set(slot, found);
    return found;
  };
  /** A pattern with its slots filled, `own` in the first where it fits; undefined where words are missing. */
  const filled = (pattern: string, own?: string): string | undefined => {
    let isOwnPlaced = own === undefined;
    const taken = new Set<string>(own === undefined ? [] : [own]);
    let isWhole = true;
    const sentence = pattern.replace(/\{(\w)\}/g, (_, letter: SlotClass) => {
      if (!isOwnPlaced && own !== undefined && fits(own, letter)) {
        isOwnPlaced = true;
        return own;
      }
      const word = fillersFor(letter).find((each) => !taken.has(each));
      if (word === undefined) isWhole = false;
      else taken.add(word);
      return word ?? '';
    });
    if (!isWhole || !isOwnPlaced) return undefined;
    return sentence.replace(/\b([Aa]) (\w+)/g, (_, article: string, word: string) =>
      startsWithVowel(word, phonics) ? `${article}n ${word}` : `${article} ${word}`,
    );
  };
  const noteUse = (sentence: string): void => {
    for (const list of fillers.values()) {
      const used = list.filter((word) => new RegExp(`\\b${word}\\b`, 'i').test(sentence));
      for (const word of used) list.push(...list.splice(list.indexOf(word), 1));
    }
  };
  const firstAllowed = (
    patterns: readonly string[],
    own: string | undefined,
    lines: readonly string[],
  ): string | undefined => {
    let second: string | undefined;
    for (const pattern of patterns) {
      for (let tries = 0; tries < 3; tries++) {
        const sentence = filled(pattern, own);
        if (sentence === undefined) break;
        // The next try, if there is one, has other words: *bow* is not read everywhere as it is by itself.
        noteUse(sentence);
        if (!isAllowed(sentence)) continue;
        if (!lines.includes(sentence)) return sentence;
        second ??= sentence;
      }
    }
    return second;
  };

  return {
    reviewOf,
    /** A sentence with a high-frequency word in it; the word by itself where there is none. */
    sentenceWith: (word: string, lines: readonly string[]): string => {
      const holding = sentencePatterns.filter((pattern) => wordsOf(pattern).includes(foldedWord(word)));
      return firstAllowed(holding, undefined, lines) ?? alone(word);
    },
    /** A sentence about a word; the word by itself where there is none. */
    sentenceFor: (word: string, lines: readonly string[]): string => {
      const all = sentencePatterns.filter((pattern) => pattern.split('{').length === 2);
      // Not always the first that is allowed, so that lines differ.
      const start = lines.length % 3;
      const plainer = all.slice(0, 10);
      const turned = [...plainer.slice(start), ...plainer.slice(0, start), ...all.slice(10)];
      return firstAllowed(turned, word, lines) ?? alone(word);
    },
    /** A word for one of the lesson's new spellings. */
    wordWith: (place: number): string | undefined => {
      const spelling = newSpellings[place];
      if (spelling === undefined) return undefined;
      const wanted = { letters: spelling.line.letters, pattern: spelling.pattern };
      const practises = ({
        newSpellings: uses,
      }: {
        readonly newSpellings: Taught['newSpellings'];
      }): boolean => uses.includes(spelling);
      const found = [{ baseFormsOnly: true }, {}, { includesRare: true }].flatMap((query) =>
        finder.find(taught, { spelling: wanted, isNew: true, limit: 10, ...query }).words.filter(practises),
      );
      return found.map(({ word }) => word).find((word) => isAllowed(alone(word)));
    },
    /** The next word that practises a new spelling; after the last the first again. */
    nextNew: (): string | undefined => fresh[freshAt++ % Math.max(1, fresh.length)],
    nextKnown: (): string | undefined => known[knownAt++ % Math.max(1, known.length)],
  };
}

const sentenceRules: ReadonlySet<string> = new Set([
  'untaught-spelling',
  'untaught-form',
  'guessed-reading',
  'long-sentence',
  'untaught-punctuation',
]);

function wordsOf(pattern: string): readonly string[] {
  return (
    foldedWord(pattern)
      .replace(/\{\w\}/g, ' ')
      .match(/[a-z']+/g) ?? []
  );
}

function alone(word: string): string {
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}.`;
}

function startsWithVowel(word: string, phonics: Phonics): boolean {
  const first = phonics.readingsOf(word)[0]?.parts.flatMap(({ sounds }) => sounds)[0];
  return first !== undefined && isVowel(first);
}
