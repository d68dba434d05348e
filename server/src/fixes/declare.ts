import { findFrontMatter } from '../story/front-matter-block.ts';
import type { Story, StoryWord } from '../story/story.ts';
import type { TextEdit } from './text-edit.ts';
import { type MapPlace, withEntry, withItem, withoutEntry } from './yaml-edits.ts';

/** Declares a story word in the front matter, its meaning still to be written; undefined where that cannot be done. */
export function declareStoryWord(story: Story, word: string): TextEdit | undefined {
  const place = frontMatterOf(story);
  return place && withEntry(place, 'story words', word, ['title', 'lesson', 'sequence', 'names']);
}

/** Declares a name in the front matter; undefined where that cannot be done. */
export function declareName(story: Story, name: string): TextEdit | undefined {
  const place = frontMatterOf(story);
  return place && withItem(place, 'names', name, ['title', 'lesson', 'sequence']);
}

/** Takes a story word out of the front matter, with the key when it was the only one. */
export function removeStoryWord(story: Story, { span }: StoryWord): TextEdit | undefined {
  const place = frontMatterOf(story);
  return place && withoutEntry(place, 'story words', span);
}

function frontMatterOf({ text }: Story): MapPlace | undefined {
  const block = findFrontMatter(text);
  return block?.closed === true ? { text, span: block.content } : undefined;
}
