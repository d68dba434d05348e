import type { ChainAnswer, FitAnswer, WordsAnswer } from '../../../server/src/editor/workshop/protocol.ts';
import { shownShare } from '../../../server/src/review/figures.ts';

/** How many words were found, as a sentence. */
export function wordsSummary({ lesson, words, hasMore }: WordsAnswer): string {
  if (words.length === 0) return `No word is like that at lesson ${lesson}.`;
  const count = `${words.length} ${words.length === 1 ? 'word' : 'words'}`;
  return hasMore ? `The first ${count} of lesson ${lesson}` : `${count} at lesson ${lesson}, and no more`;
}

/** A stretch of a word; the changed ones are marked. */
export interface Stretch {
  readonly text: string;
  readonly isChanged: boolean;
}

/** A word in stretches, changed letters apart. */
export function stretchesOf({ word, changed }: ChainAnswer['links'][number]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const { start, end } of [...changed].sort((one, other) => one.start - other.start)) {
    if (start > at) stretches.push({ text: word.slice(at, start), isChanged: false });
    stretches.push({ text: word.slice(start, end), isChanged: true });
    at = end;
  }
  if (at < word.length) stretches.push({ text: word.slice(at), isChanged: false });
  return stretches;
}

/** What a step does, in words; empty for the first word. */
export function stepLabel({ step }: ChainAnswer['links'][number]): string {
  if (step === undefined) return '';
  const { kind, from = '', to = '' } = step;
  return { change: `change ${from} to ${to}`, add: `add ${to}`, drop: `drop ${from}` }[kind];
}

/** How the chain compares with what was asked, as a sentence. */
export function chainSummary({ links, length, isComplete, isLongest, lesson }: ChainAnswer): string {
  if (links.length < 2) return `There is no chain of these words at lesson ${lesson}.`;
  if (isComplete) return `${links.length} words at lesson ${lesson}`;
  const why = isLongest ? 'no longer chain exists' : 'no longer chain was found';
  return `${links.length} words, not ${length}: ${why} at lesson ${lesson}.`;
}

/** The chain as a note for the teacher. */
export function chainNote({ links }: ChainAnswer): string {
  return `Word chain: ${links.map(({ word }) => word).join(', ')}.`;
}

/** Points of the curve in a box; `y` grows downwards. */
export interface Curve {
  readonly readable: string;
  readonly target: string;
}

/** The curves of what is readable and of the target, for `polyline`. */
export function fitCurve(lessons: FitAnswer['lessons'], width: number, height: number): Curve {
  const step = lessons.length > 1 ? width / (lessons.length - 1) : 0;
  const line = (share: (lesson: FitAnswer['lessons'][number]) => number): string =>
    lessons.map((lesson, index) => `${round(index * step)},${round(height * (1 - share(lesson)))}`).join(' ');
  return { readable: line(({ readable }) => readable), target: line(({ target }) => target) };
}

/** Where the text belongs, as a sentence. */
export function fitSummary({ first, lasting, lessons, words }: FitAnswer): string {
  const last = lessons.at(-1);
  if (first === undefined) {
    const share =
      last === undefined ? '' : ` ${shownShare(last.readable)} of its ${words} words at the last lesson.`;
    return `No lesson reaches the target.${share}`;
  }
  const later =
    lasting !== undefined && lasting !== first ? ` It reaches every target from lesson ${lasting} on.` : '';
  return `Lesson ${first} is the first that reaches its target.${later}`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
