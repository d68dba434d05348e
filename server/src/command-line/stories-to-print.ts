import { lessonChain } from '../materials/lesson-chain.ts';
import type { ChainWord } from '../materials/order.ts';
import type { Review } from '../review/review.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { createWordFinder, type WordFinder } from '../words/find-words.ts';
import { checkStory, sequenceComplaint } from './check-story.ts';
import type { Call } from './command.ts';
import type { Complaint } from './complaint.ts';
import { type FoundText, findTexts } from './find-texts.ts';
import type { Host } from './host.ts';
import { createSequenceFinder } from './sequence-finder.ts';

/** A story of the call, ready to be printed but for its pictures. */
export interface StoryToPrint {
  /** As it is shown. */
  readonly path: string;
  readonly found: FoundText;
  readonly review: Review;
  /** A word-building chain of its lesson; empty when none is wanted or there is none. */
  readonly chain: readonly ChainWord[];
}

/** Reads and reviews the stories of a call and, where it is wanted, makes a word-building chain for each lesson. */
export function storiesToPrint(
  { operands, options }: Call,
  { needsChain }: { readonly needsChain: boolean },
  host: Host,
): { readonly stories: readonly StoryToPrint[]; readonly complaints: readonly Complaint[] } {
  const lesson = options.get('lesson');
  const wishes = { lesson, sequence: options.get('sequence') };
  const { texts, complaints } = findTexts(operands, { plainText: lesson !== undefined }, host);
  const sequences = createSequenceFinder(host);
  const misnamed = sequenceComplaint(wishes.sequence, sequences, host);
  if (misnamed !== undefined) return { stories: [], complaints: [...complaints, misnamed] };
  const chains = createChains(host);
  const stories: StoryToPrint[] = [];
  const unusable: Complaint[] = [...complaints];
  for (const found of texts) {
    const outcome = checkStory(found, wishes, sequences, host);
    if (outcome.kind === 'unusable') unusable.push(...outcome.complaints);
    if (outcome.kind !== 'checked') continue;
    const { review, sequence } = outcome.checked;
    const chain = needsChain ? chains(sequence.teaching, review.taught) : [];
    stories.push({ path: found.path, found, review, chain });
  }
  if (stories.length === 0 && unusable.length === 0) {
    unusable.push({
      path: operands.join(' '),
      message: 'There is no story here: no markdown file whose front matter has a lesson.',
    });
  }
  if (sequences.errors() > 0) {
    unusable.push({
      path: operands.join(' '),
      message: 'Mend the sequence first: the lessons depend on it.',
    });
  }
  return { stories, complaints: unusable };
}

/** Makes the chain of each lesson once. */
function createChains(host: Host): (teaching: Teaching, taught: Taught) => readonly ChainWord[] {
  const finders = new Map<Teaching, WordFinder>();
  const chains = new Map<Taught, readonly ChainWord[]>();
  return (teaching, taught) => {
    const known = chains.get(taught);
    if (known !== undefined) return known;
    const finder = finders.get(teaching) ?? createWordFinder(teaching, host.phonics());
    finders.set(teaching, finder);
    const chain = lessonChain(finder, taught, host.phonics());
    chains.set(taught, chain);
    return chain;
  };
}
