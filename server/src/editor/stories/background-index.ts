import type { Connection } from 'vscode-languageserver';
import { readSequence } from '../../sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../sequence/teaching.ts';
import { compareStandings } from '../../series/compare.ts';
import { shortfall } from '../../series/standing.ts';
import { storyTitle } from '../../story/story-title.ts';
import type { Cancel, Timers } from '../host.ts';
import {
  type CheckStoriesResult,
  type StoriesParams,
  type StoryStanding,
  storiesNotification,
  type WhatIfParams,
  type WhatIfResult,
} from '../protocol.ts';
import { seriesChangedNotification } from '../series/protocol.ts';
import { createWorkspaceSeries, type WorkspaceSeries } from '../series/workspace-series.ts';
import { canonicalUri, fileName, isYamlName } from '../uri.ts';
import { homeOf } from '../workspace.ts';
import { createClosedProblems } from './closed-problems.ts';
import { createWorkspaceStories, type StorySource } from './workspace-stories.ts';

/** Knows how all stories of the workspace stand, and tells the client when that changes. */
export interface BackgroundIndex {
  /** Finds and judges all stories, now or again. */
  start(): void;
  /** Files have changed: on disk, or in the editor, where they were opened, typed in or closed. */
  changed(uris: readonly string[], by: 'typing' | 'files'): void;
  /** A document was opened: its problems come the usual way. */
  opened(uri: string): void;
  /** Shows the problems of closed stories, or takes them away. */
  checkStories(isShown: boolean): Promise<CheckStoriesResult>;
  whatIf(params: WhatIfParams): Promise<WhatIfResult | null>;
  /** The series, once all that has changed is taken in. From then on the client hears when it may be another. */
  series(): Promise<WorkspaceSeries>;
  /** How many things are remembered. */
  readonly size: number;
}

interface Surroundings extends Omit<StorySource, 'pause'> {
  readonly connection: Connection;
  readonly timers: Timers;
  readonly failed: (doing: string, fault: unknown) => void;
}

/** Milliseconds without a change before the stories are looked at again, while somebody types and after files have changed. */
const pauses = { typing: 250, files: 10 } as const;

/** Stories judged before requests may come in between. */
const judgedAtOnce = 20;

/** Makes the index of a server; it does nothing before `start`. */
export function createBackgroundIndex(surroundings: Surroundings): BackgroundIndex {
  const { connection, timers, failed, phonics, workspace, open, read, largestFile } = surroundings;
  const pause = (): Promise<void> => new Promise((resolve) => timers.soon(resolve));
  const stories = createWorkspaceStories({ ...surroundings, pause });
  const isOpen = (uri: string): boolean => open(uri) !== undefined;
  const problems = createClosedProblems({
    connection,
    phonics,
    stories,
    workspace,
    isOpen,
    largestFile,
    pause,
  });
  const series = createWorkspaceSeries({ phonics, stories, pause });
  let isFollowed = false;
  let standings = new Map<string, StoryStanding>();
  let told: ReadonlyMap<string, StoryStanding> | undefined;
  let isStarted = false;
  /** Goes up with each change, so that work on what was so before is left. */
  let changes = 0;
  let planned: Cancel | undefined;
  let working: Promise<void> | undefined;

  const plan = (by: 'typing' | 'files'): void => {
    planned?.();
    planned = timers.after(pauses[by], () => {
      planned = undefined;
      void work();
    });
  };

  /** Works until nothing has changed meanwhile. All who ask share the same work. */
  const work = (): Promise<void> => {
    working ??= workThrough()
      .catch((fault: unknown) => failed('the index of stories', fault))
      .finally(() => {
        working = undefined;
      });
    return working;
  };

  const workThrough = async (): Promise<void> => {
    for (;;) {
      const seen = changes;
      await stories.catchUp();
      const judged = await judgeAll(() => changes === seen);
      if (judged === undefined || stories.isBehind || changes !== seen) continue;
      standings = judged;
      tell();
      if (isFollowed) void connection.sendNotification(seriesChangedNotification);
      await problems.refresh();
      if (changes === seen) return;
    }
  };

  const judgeAll = async (isCurrent: () => boolean): Promise<Map<string, StoryStanding> | undefined> => {
    const found = new Map<string, StoryStanding>();
    let done = 0;
    for (const uri of [...stories.index.paths()].sort()) {
      const story = stories.index.story(uri);
      const sequence = story && stories.sequenceOf(uri, story);
      const file = sequence instanceof Promise ? await sequence : sequence;
      const standing = file && standingOf(uri, file.teaching);
      if (standing !== undefined) found.set(uri, standing);
      if (++done % judgedAtOnce === 0) await pause();
      if (!isCurrent()) return undefined;
    }
    return found;
  };

  const standingOf = (uri: string, teaching: Teaching): StoryStanding | undefined => {
    const story = stories.index.story(uri);
    const lesson = story?.frontMatter.lesson?.value;
    if (story === undefined || lesson === undefined) return undefined;
    const standing = stories.index.standing(uri, teaching);
    return {
      uri,
      title: storyTitle(story) ?? fileName(uri),
      lesson,
      passes: standing?.passes ?? false,
      readable: standing?.readable ?? 0,
      target: standing?.target ?? 0,
      why: standing === undefined ? `the sequence has no lesson “${lesson}”` : shortfall(standing),
    };
  };

  const tell = (): void => {
    const before = told;
    const turned = [...standings.values()].flatMap(({ uri, title, passes }): StoriesParams['turned'] => {
      const passed = before?.get(uri)?.passes;
      return passed === undefined || passed === passes
        ? []
        : [{ uri, title, turn: passes ? 'gains' : 'loses' }];
    });
    const failing = [...standings.values()].filter(({ passes }) => !passes);
    told = standings;
    if (before !== undefined && turned.length === 0 && isSame(before, standings)) return;
    const params: StoriesParams = { stories: standings.size, leftOut: stories.leftOut, failing, turned };
    void connection.sendNotification(storiesNotification, params);
  };

  return {
    start: () => {
      isStarted = true;
      changes++;
      stories.listAgain();
      void work();
    },
    changed: (uris, by) => {
      if (!isStarted) return;
      stories.changed(uris);
      if (!stories.isBehind && !uris.some((uri) => isYamlName(uri))) return;
      changes++;
      plan(by);
    },
    opened: (uri) => problems.opened(canonicalUri(uri)),
    checkStories: async (isShown) => {
      planned?.();
      problems.show(isShown);
      changes++;
      await work();
      const failing = [...standings.values()].filter(({ passes }) => !passes).length;
      return { stories: standings.size, failing };
    },
    series: async () => {
      if (working !== undefined || planned !== undefined) await work();
      isFollowed = true;
      return series;
    },
    whatIf: async ({ sequenceUri, text }) => {
      const uri = canonicalUri(sequenceUri);
      const home = homeOf(uri, workspace());
      const saved = home === undefined ? null : await read(uri, home.root);
      const tried = text ?? open(uri)?.document.getText() ?? saved;
      if (saved === null || tried === null) return null;
      await work();
      const before = teachingOf(readSequence(saved), phonics);
      const after = tried === saved ? before : teachingOf(readSequence(tried), phonics);
      const changed: WhatIfResult['changed'][number][] = [];
      let count = 0;
      for (const path of [...stories.index.paths()].sort()) {
        const story = stories.index.story(path);
        const file = story && (await stories.sequenceOf(path, story));
        if (story === undefined || file === undefined || canonicalUri(file.snapshot.uri) !== uri) continue;
        if (++count % judgedAtOnce === 0) await pause();
        const was = stories.index.standing(path, before);
        const would = stories.index.standing(path, after);
        const { turn } = compareStandings(was, would);
        if (turn === 'stays') continue;
        const shown = { before: was && standingOf(path, before), after: would && standingOf(path, after) };
        changed.push({
          uri: path,
          title: storyTitle(story) ?? fileName(path),
          turn,
          ...(shown.before && { before: shown.before }),
          ...(shown.after && { after: shown.after }),
        });
      }
      return { stories: count, changed };
    },
    get size() {
      return stories.index.size + problems.size + standings.size;
    },
  };
}

function isSame(
  before: ReadonlyMap<string, StoryStanding>,
  after: ReadonlyMap<string, StoryStanding>,
): boolean {
  if (before.size !== after.size) return false;
  for (const [uri, standing] of after) {
    const known = before.get(uri);
    if (known === undefined || known.passes !== standing.passes || known.why !== standing.why) return false;
    if (known.title !== standing.title || known.readable !== standing.readable) return false;
  }
  return true;
}
