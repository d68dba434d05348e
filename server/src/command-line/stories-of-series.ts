import { relative } from 'node:path';
import type { Review } from '../review/review.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { checkStory, sequenceComplaint } from './check-story.ts';
import type { Complaint } from './complaint.ts';
import { type FoundText, findTexts, withForwardSlashes } from './find-texts.ts';
import type { Host } from './host.ts';
import { createSequenceFinder, type SequenceFile, type SequenceFinder } from './sequence-finder.ts';

/** A story of a series with its review. */
export interface ReviewedStory {
  readonly found: FoundText;
  readonly review: Review;
}

/** The stories of a folder along one sequence; or what stands in the way. */
export interface SeriesStories {
  readonly stories: readonly ReviewedStory[];
  /** The one sequence of all stories; absent when there is no story. */
  readonly sequence: SequenceFile | undefined;
  /** Files that could not be used. */
  readonly complaints: readonly Complaint[];
  readonly sequences: SequenceFinder;
}

/** Reads and reviews every story of a folder. Stories of several sequences are no series: that is a complaint. */
export function storiesOfSeries(folder: string, sequence: string | undefined, host: Host): SeriesStories {
  const { texts, complaints } = findTexts([folder], { plainText: false }, host);
  const sequences = createSequenceFinder(host);
  const wishes = { lesson: undefined, sequence };
  const unusable: Complaint[] = [...complaints];
  const byTeaching = new Map<Teaching, { file: SequenceFile; stories: ReviewedStory[] }>();
  const misnamed = sequenceComplaint(sequence, sequences, host);
  if (misnamed !== undefined) {
    return { stories: [], sequence: undefined, complaints: [...complaints, misnamed], sequences };
  }
  texts.forEach((found, index) => {
    if (index % 20 === 0 && texts.length > 50) host.showProgress(`Reading ${index + 1} of ${texts.length}`);
    const outcome = checkStory(found, wishes, sequences, host);
    if (outcome.kind === 'unusable') unusable.push(...outcome.complaints);
    if (outcome.kind !== 'checked') return;
    const { review, sequence: file } = outcome.checked;
    const group = byTeaching.get(file.teaching) ?? { file, stories: [] };
    group.stories.push({ found, review });
    byTeaching.set(file.teaching, group);
  });
  host.showProgress('');
  const groups = [...byTeaching.values()];
  const paths = groups.map(({ file, stories }) => `${file.path} (${stories.length})`);
  if (groups.length > 1) {
    unusable.push({
      path: folder,
      message: `These stories follow ${groups.length} sequences: ${paths.join(', ')}. Name the folder of one, or read all by one with --sequence FILE.`,
    });
  }
  if (groups.length === 0 && unusable.length === 0) {
    unusable.push({
      path: folder,
      message: 'There is no story here: no markdown file whose front matter has a lesson.',
    });
  }
  const only = groups.length === 1 ? groups[0] : undefined;
  return { stories: only?.stories ?? [], sequence: only?.file, complaints: unusable, sequences };
}

/** The way from the folder of the call to a story, with forward slashes. */
export function pathInFolder(folder: string, { absolute }: FoundText): string {
  return withForwardSlashes(relative(folder, absolute));
}
