import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { repository } from './package.ts';

/** The file names of the writing desk's own story and sequence. */
export const storyName = 'story.md';
export const sequenceName = 'sequence.yaml';

const sequence = `title: Editor tests
targets:
  readable: 95
  practice: 0
lessons:
  - name: "1"
    title: First sounds
    high-frequency words: [the]
    spellings:
      - m as in mud
      - s as in sun
      - t as in top
      - a as in map
      - n as in nap
      - p as in pan
      - i as in sit
      - d as in dad
  - name: "2"
    title: One long i
    spellings:
      - igh as in light
`;

const story = `---
title: The Nap
lesson: "1"
---
# The Nap

The man pats the ant.
Dad sat in the night.
`;

/** A folder to write in: one short story of ten running words, nine of them readable, its sequence, and the samples. */
export interface WritingDesk {
  readonly folder: string;
  /** Where lesson 2 begins in the sequence; lines count from 1. */
  readonly secondLessonLine: number;
  /** Where "night" stands in the story. */
  readonly night: { readonly line: number; readonly column: number };
  /** The text of one of its files on the disk. */
  read(name: string): string;
  /** Puts the story and the sequence back as they were. */
  reset(): void;
  /** Makes a mistake in the sequence, on the disk. */
  breakSequence(): void;
  /** Removes the folder. */
  clear(): void;
}

/** Lays out a fresh folder outside the repository. */
export function layOutDesk(): WritingDesk {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'battledore-desk-')));
  mkdirSync(join(folder, 'samples'));
  cpSync(join(repository, 'samples'), join(folder, 'samples'), { recursive: true });
  const reset = () => {
    writeFileSync(join(folder, sequenceName), sequence);
    writeFileSync(join(folder, storyName), story);
  };
  reset();
  return {
    folder,
    secondLessonLine: lineOf(sequence, 'name: "2"'),
    night: { line: lineOf(story, 'night'), column: 'Dad sat in the '.length + 1 },
    read: (name) => readFileSync(join(folder, name), 'utf8'),
    reset,
    breakSequence: () => writeFileSync(join(folder, sequenceName), sequence.replace('sit', 'sun')),
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** The story as it reads after the writing checks have changed and saved it. */
export const finishedStory = `${story}The man sit.\n`;

/** The sequence after lesson 2 was joined to lesson 1. */
export const joinedSequence = sequence.replace(/ {2}- name: "2"\n.*\n.*spellings:\n/, '');

function lineOf(text: string, part: string): number {
  return text.slice(0, text.indexOf(part)).split('\n').length;
}
