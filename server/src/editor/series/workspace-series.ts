import type { Phonics } from '../../phonics/phonics.ts';
import type { Review } from '../../review/review.ts';
import { reviewStory } from '../../review/review-story.ts';
import { coverSeries } from '../../series/cover-series.ts';
import type { Series, StoryCoverage } from '../../series/series.ts';
import { rangeOf } from '../diagnostics.ts';
import { snapshotOf } from '../documents.ts';
import type { SequenceFile } from '../sequence-files.ts';
import type { WorkspaceStories } from '../stories/workspace-stories.ts';
import { canonicalUri, fileName } from '../uri.ts';
import { placeInStory } from './find-place.ts';
import type { SeriesAnswer, SeriesParams, SeriesPlaceParams, SeriesPlaceResult } from './protocol.ts';
import { seriesAnswer } from './series-answer.ts';

/** The series that the stories of the workspace make, as the editor has them and their sequences now. */
export interface WorkspaceSeries {
  /** The series of a sequence, or of the sequence with the most stories. */
  answer(params: SeriesParams): Promise<SeriesAnswer | null>;
  /** The same as the core has it, paths being the way from the sequence's folder; for reports. */
  series(params: SeriesParams): Promise<Series | null>;
  place(params: SeriesPlaceParams): Promise<SeriesPlaceResult>;
  /** The story at an address, reviewed; nothing where there is none, or the sequence lacks its lesson. */
  story(uri: string): Promise<StoryOfSeries | undefined>;
}

/** A story of the workspace, open or not. */
export interface StoryOfSeries {
  /** Canonical. */
  readonly uri: string;
  readonly review: Review;
}

interface Surroundings {
  readonly phonics: Phonics;
  readonly stories: WorkspaceStories;
  readonly pause: () => Promise<void>;
}

interface Group {
  readonly file: SequenceFile;
  readonly uris: string[];
}

/** Stories covered before requests may come in between. */
const coveredAtOnce = 20;

/** It remembers nothing itself; the index of the stories does. */
export function createWorkspaceSeries({ phonics, stories, pause }: Surroundings): WorkspaceSeries {
  /** The stories by their sequences, those with the most first. */
  const grouped = async (): Promise<readonly Group[]> => {
    const groups = new Map<string, Group>();
    for (const uri of [...stories.index.paths()].sort()) {
      const story = stories.index.story(uri);
      const file = story && (await stories.sequenceOf(uri, story));
      if (file === undefined) continue;
      const key = canonicalUri(file.snapshot.uri);
      const group = groups.get(key) ?? { file, uris: [] };
      group.uris.push(uri);
      groups.set(key, group);
    }
    return [...groups.values()].sort((left, right) => right.uris.length - left.uris.length);
  };

  const chosen = (groups: readonly Group[], uri: string | undefined): Group | undefined => {
    const wanted = uri === undefined ? undefined : canonicalUri(uri);
    const isWanted = ({ file, uris }: Group): boolean =>
      wanted !== undefined && (canonicalUri(file.snapshot.uri) === wanted || uris.includes(wanted));
    return groups.find(isWanted) ?? groups[0];
  };

  const covered = async ({ file, uris }: Group): Promise<Series> => {
    const found: StoryCoverage[] = [];
    let done = 0;
    for (const uri of uris) {
      const coverage = stories.index.coverage(uri, file.teaching);
      if (coverage !== undefined) found.push({ ...coverage, title: titleOf(coverage) });
      if (++done % coveredAtOnce === 0) await pause();
    }
    return coverSeries(found, file.teaching);
  };

  const reviewed = async (canonical: string): Promise<Review | undefined> => {
    const story = stories.index.story(canonical);
    const file = story && (await stories.sequenceOf(canonical, story));
    const taught = file?.teaching.taughtAt(story?.frontMatter.lesson?.value ?? '');
    return story && taught && reviewStory({ story, taught, phonics });
  };

  return {
    answer: async ({ uri }) => {
      const groups = await grouped();
      const group = chosen(groups, uri);
      if (group === undefined) return null;
      const sequences = groups.map(({ file, uris }) => ({
        uri: file.snapshot.uri,
        title: file.teaching.sequence.title,
        stories: uris.length,
      }));
      return seriesAnswer(group.file.snapshot.uri, await covered(group), sequences);
    },
    series: async ({ uri }) => {
      const group = chosen(await grouped(), uri);
      if (group === undefined) return null;
      const folder = canonicalUri(group.file.snapshot.uri).replace(/[^/]*$/, '');
      const series = await covered(group);
      const inFolder = (path: string): string =>
        decodeURIComponent(path.startsWith(folder) ? path.slice(folder.length) : fileName(path));
      // Every mention of a story is the same object, in the list, among the words and in the gaps.
      const renamed = series.stories.map(({ story }) => ({ ...story, path: inFolder(story.path) }));
      return coverSeries(renamed, group.file.teaching);
    },
    place: async ({ uri, place }) => {
      const canonical = canonicalUri(uri);
      if (place.kind === 'lesson') {
        const group = (await grouped()).find(({ file }) => canonicalUri(file.snapshot.uri) === canonical);
        const lesson = group?.file.teaching.lessonNamed(place.lesson);
        return group && lesson ? rangeOf(group.file.snapshot, lesson.nameSpan) : null;
      }
      const review = await reviewed(canonical);
      const span = review && placeInStory(review, place);
      if (review === undefined || span === undefined) return null;
      return rangeOf(snapshotOf(uri, 'markdown', 0, review.story.text), span);
    },
    story: async (uri) => {
      const canonical = canonicalUri(uri);
      const review = await reviewed(canonical);
      return review && { uri: canonical, review };
    },
  };
}

/** A story without a title goes by the name of its file, not by its whole address. */
function titleOf({ title, path }: StoryCoverage): string {
  return title === path ? fileName(path) : title;
}
