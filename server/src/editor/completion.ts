import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  type Position,
} from 'vscode-languageserver';
import { notated } from '../phonics/notation.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Review } from '../review/review.ts';
import { graphemesOf } from '../sequence/resolve-spelling.ts';
import type { WordFinders } from '../words/word-finders.ts';
import { type WordToWrite, wordsToWrite } from '../words/words-to-write.ts';
import type { Analysis } from './analysis.ts';
import { frontMatterCompletions } from './complete-front-matter.ts';
import { sequenceCompletions } from './complete-sequence.ts';
import { rangeOf } from './diagnostics.ts';
import type { Settings } from './protocol.ts';
import { wordAt } from './word-at.ts';

/** Completes what is being written. */
export interface Completer {
  /** What may stand at a place; nothing in notes for the teacher, in notes for the illustrator, in code. */
  completionsAt(analysis: Analysis, position: Position, sounds: Settings['sounds']): CompletionList;
}

/** Makes the completer of a server. */
export function createCompleter(phonics: Phonics, finderOf: WordFinders): Completer {
  return {
    completionsAt(analysis, position, sounds) {
      const { content, snapshot } = analysis;
      const offset = snapshot.document.offsetAt(position);
      if (content.kind === 'sequence') return listOf(sequenceCompletions(analysis, offset, phonics));
      const story = content.kind === 'reviewed' ? content.review.story : content.story;
      if (story?.isStory && offset <= story.frontMatter.span.end) {
        return listOf(frontMatterCompletions(analysis, offset));
      }
      if (content.kind !== 'reviewed') return listOf([]);
      const typed = typedWord(content.review, offset);
      if (typed === undefined) return listOf([]);
      const finder = finderOf(content.sequenceFile.teaching);
      const words = wordsToWrite(typed.prefix, content.review, finder, phonics);
      const range = rangeOf(snapshot, { start: typed.start, end: offset });
      return listOf(words.map((word, index) => itemOf(word, index, typed.prefix, range, sounds)));
    },
  };
}

/** The letters of a word of the child's text up to the caret; undefined where no such word ends or is written. */
function typedWord(
  review: Review,
  offset: number,
): { readonly prefix: string; readonly start: number } | undefined {
  const place = wordAt(review, offset);
  if (place === undefined || offset <= place.span.start) return undefined;
  const prefix = review.story.text.slice(place.span.start, offset);
  // Letters only: a word with emphasis marks or references inside is left alone.
  return /^[A-Za-z'\u2019]+$/.test(prefix) ? { prefix, start: place.span.start } : undefined;
}

function itemOf(
  { found, why }: WordToWrite,
  index: number,
  prefix: string,
  range: ReturnType<typeof rangeOf>,
  sounds: Settings['sounds'],
): CompletionItem {
  const label = inCapitals(found.word, prefix);
  const { reading } = found;
  const said =
    reading === undefined
      ? ''
      : `${graphemesOf(reading)} ${reading.parts.map((part) => notated(part.sounds, sounds, part.stress)).join('')}`;
  const reason = { 'still missing': 'still missing', new: 'practises what is new', readable: '' }[why];
  return {
    label,
    kind: found.kind === 'high-frequency' ? CompletionItemKind.Keyword : CompletionItemKind.Text,
    detail: [said, reason].filter((text) => text !== '').join(' · '),
    sortText: String(index).padStart(4, '0'),
    filterText: label,
    textEdit: { range, newText: label },
  };
}

/** The word as the writer began it: *Sh* gives *Ship*. */
function inCapitals(word: string, prefix: string): string {
  const first = prefix.charAt(0);
  return first !== first.toLowerCase() ? word.charAt(0).toUpperCase() + word.slice(1) : word;
}

function listOf(items: CompletionItem[]): CompletionList {
  // Another letter may bring words that were past the limit.
  return { isIncomplete: true, items };
}
