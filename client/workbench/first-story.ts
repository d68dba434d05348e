import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { takeSnapshot } from './changes.ts';

/**
 * The file to show when a folder is opened for the first time, relative to the folder: a story whose file name says
 * that it is a draft, else the first story, else the first markdown file; nothing in a folder without markdown.
 */
export async function findFirstStory(folder: string): Promise<string | undefined> {
  const files = [...(await takeSnapshot(folder)).keys()].filter((path) => path.endsWith('.md')).sort();
  const stories: string[] = [];
  for (const file of files) if (await namesLesson(join(folder, file))) stories.push(file);
  return stories.find((path) => /draft/i.test(path)) ?? stories[0] ?? files[0];
}

/** A cheap look at the front matter; whether it is a good one is for the review to say. */
async function namesLesson(place: string): Promise<boolean> {
  const text = await readFile(place, 'utf8').catch(() => '');
  return /^\uFEFF?---\r?\n(?:(?!---).*\r?\n)*?lesson\s*:/.test(text);
}
