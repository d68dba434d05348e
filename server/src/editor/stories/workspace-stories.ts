import type { Phonics } from '../../phonics/phonics.ts';
import { sequenceFileName } from '../../sequence/sequence-file-name.ts';
import { createStoryIndex, type StoryIndex } from '../../series/story-index.ts';
import type { Story } from '../../story/story.ts';
import type { Snapshot } from '../documents.ts';
import type { SequenceFile, SequenceFiles } from '../sequence-files.ts';
import { canonicalUri, fileName, isInside, isYamlName, resolvedIn } from '../uri.ts';
import { homeOf, type Workspace } from '../workspace.ts';

/** The stories of the workspace, open or not: the editor's text where a file is open, else the disk's. */
export interface WorkspaceStories {
  readonly index: StoryIndex;
  /** Finds the files anew: at the start, and when folders or the set of files may have changed. */
  listAgain(): void;
  /** Takes notice that files have changed, on disk or in the editor. */
  changed(uris: readonly string[]): void;
  /** True when something waits to be listed or read. */
  readonly isBehind: boolean;
  /** Lists and reads what waits. Gives whether something is different now. */
  catchUp(): Promise<boolean>;
  /** The sequence that a story follows. */
  sequenceOf(uri: string, story: Story): Promise<SequenceFile | undefined> | SequenceFile | undefined;
  /** Files that were left out, since there are too many or they are too long. */
  readonly leftOut: number;
}

/** What the stories are read from. */
export interface StorySource {
  readonly phonics: Phonics;
  readonly sequences: SequenceFiles;
  readonly workspace: () => Workspace;
  /** The open document at a canonical address. */
  readonly open: (uri: string) => Snapshot | undefined;
  readonly read: (uri: string, root: string) => Promise<string | null>;
  /** Addresses of the markdown and YAML files below a folder. */
  readonly list: (folder: string, most: number) => Promise<readonly string[]>;
  /** The setting, in kilobytes. */
  readonly largestFile: () => number;
  /** Lets requests come in between. */
  readonly pause: () => Promise<void>;
}

/** Stories kept at most; a thousand of 150 words take some 60 MB. */
const mostStories = 3000;

/** Files listed at most. */
const mostFiles = 20_000;

/** Files read in one go. */
const readAtOnce = 16;

/** Begins with nothing; `listAgain` is the first thing to call. */
export function createWorkspaceStories(source: StorySource): WorkspaceStories {
  const { phonics, sequences, workspace, open, read, list, largestFile, pause } = source;
  const index = createStoryIndex(phonics);
  const files = new Set<string>();
  const unread = new Set<string>();
  const tooMany = new Set<string>();
  let mustList = false;
  let unlisted = 0;

  const listAll = async (): Promise<boolean> => {
    mustList = false;
    const found = new Set<string>();
    unlisted = 0;
    for (const folder of workspace().folders) {
      const listed = (await list(folder, mostFiles)).map(canonicalUri).filter((uri) => isInside(uri, folder));
      // Without a sequence there is nothing to hold a story to, and a folder of notes is not read for nothing.
      if (!listed.some((uri) => fileName(uri) === sequenceFileName)) continue;
      if (listed.length >= mostFiles) unlisted++;
      for (const uri of listed) if (isMarkdownName(uri)) found.add(uri);
    }
    let isOther = false;
    for (const uri of files) {
      if (!found.has(uri)) isOther = drop(uri) || isOther;
    }
    for (const uri of [...found].sort()) {
      if (!files.has(uri)) unread.add(uri);
      files.add(uri);
    }
    return isOther;
  };

  const drop = (uri: string): boolean => {
    files.delete(uri);
    unread.delete(uri);
    tooMany.delete(uri);
    return index.drop(uri);
  };

  const readOne = async (uri: string): Promise<boolean> => {
    const root = homeOf(uri, workspace())?.root;
    const text = open(uri)?.document.getText() ?? (root === undefined ? null : await read(uri, root));
    if (text === null) return drop(uri);
    const isKnown = index.story(uri) !== undefined;
    const isTooMuch = text.length > largestFile() * 1024 || (!isKnown && index.size >= mostStories);
    if (isTooMuch) {
      tooMany.add(uri);
      return index.drop(uri);
    }
    tooMany.delete(uri);
    return index.put(uri, text);
  };

  return {
    index,
    listAgain: () => {
      mustList = true;
    },
    changed: (uris) => {
      for (const uri of uris.map(canonicalUri)) {
        if (fileName(uri) === sequenceFileName && files.size === 0) mustList = true;
        if (!isMarkdownName(uri) || !isListed(uri, workspace())) continue;
        if (files.size === 0 && !files.has(uri)) continue;
        files.add(uri);
        unread.add(uri);
      }
    },
    get isBehind() {
      return mustList || unread.size > 0;
    },
    catchUp: async () => {
      let isOther = mustList ? await listAll() : false;
      while (unread.size > 0) {
        const batch = [...unread].slice(0, readAtOnce);
        for (const uri of batch) unread.delete(uri);
        const changes = await Promise.all(batch.map(readOne));
        isOther = changes.includes(true) || isOther;
        await pause();
      }
      return isOther;
    },
    sequenceOf: (uri, { frontMatter: { sequence } }) => {
      const home = homeOf(uri, workspace());
      if (home === undefined) return undefined;
      if (sequence === undefined) return sequences.nearest(home);
      const named = isYamlName(`file:///${sequence.value}`)
        ? resolvedIn(home.folder, sequence.value, home.root)
        : 'unusable';
      if (named === 'absolute' || named === 'unusable' || named === 'outside') return undefined;
      return sequences.at(named, home.root);
    },
    get leftOut() {
      return tooMany.size + unlisted;
    },
  };
}

function isMarkdownName(uri: string): boolean {
  return /\.(md|markdown)$/i.test(fileName(uri));
}

/** True below one of the folders, and not in a folder that listing passes by. */
function isListed(uri: string, { folders }: Workspace): boolean {
  return folders.some(
    (folder) => isInside(uri, folder) && !/\/(\.|node_modules\/)/.test(uri.slice(folder.length)),
  );
}
