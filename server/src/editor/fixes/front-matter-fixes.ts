import { removeStoryWord } from '../../fixes/declare.ts';
import { lessonHint } from '../../fixes/lesson-hint.ts';
import { removeKey } from '../../fixes/remove-key.ts';
import type { Finding } from '../../review/review.ts';
import { lessonMeant, nearestLessons } from '../../sequence/nearest-lessons.ts';
import type { Lesson } from '../../sequence/sequence.ts';
import { frontMatterKeys } from '../../story/front-matter-block.ts';
import type { FrontMatterValue, Story } from '../../story/story.ts';
import { nearestName } from '../../text/nearest-name.ts';
import type { SequenceFile } from '../sequence-files.ts';
import type { Fix, Reviewed } from './fix.ts';

/** For a key that a story does not have: the key that was meant, or none. */
export function keyFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { text, frontMatter } = review.story;
  const key = text.slice(span.start, span.end);
  if (span.end > frontMatter.span.end || frontMatterKeys.some((known) => known === key)) return [];
  const edit = removeKey(text, span);
  const near = nearestName(key, frontMatterKeys);
  const meant = text.charAt(span.end) === ':' ? near : undefined;
  return [
    ...(meant === undefined
      ? []
      : [
          {
            title: `Write “${meant}”`,
            file: 'story' as const,
            edits: [{ span, text: meant }],
            isSure: false,
          },
        ]),
    ...(edit === undefined
      ? []
      : [{ title: `Remove “${key}”`, file: 'story' as const, edits: [edit], isSure: false }]),
  ];
}

/** For a story word that the text does not use. */
export function storyWordFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { story } = review;
  const word = story.frontMatter.storyWords.find((each) => each.span.start === span.start);
  const edit = word && removeStoryWord(story, word);
  if (word === undefined || edit === undefined) return [];
  return [{ title: `Remove the story word “${word.word}”`, file: 'story', edits: [edit], isSure: true }];
}

/** The ways to mend a finding of a file that is not reviewed: what would make it a story of some lesson. */
export function unreviewedFixesFor(
  { span }: Finding,
  { story, sequenceFile }: { readonly story?: Story; readonly sequenceFile?: SequenceFile },
): readonly Fix[] {
  const lesson = story?.frontMatter.lesson;
  if (lesson !== undefined && sequenceFile !== undefined && lesson.span.start === span.start) {
    return lessonFixes(lesson, sequenceFile.teaching.sequence.lessons);
  }
  const hint = story && lessonHint(story);
  if (hint === undefined || hint.span.start !== span.start) return [];
  return [{ title: hint.title, file: 'story', edits: hint.edits, isSure: true }];
}

/** For a lesson that the sequence does not have: those that may be meant. */
function lessonFixes({ value, span }: FrontMatterValue<string>, lessons: readonly Lesson[]): readonly Fix[] {
  const names = lessons.map(({ name }) => name);
  const meant = lessonMeant(value, names);
  return nearestLessons(value, names).map((name) => ({
    title: `Write lesson “${name}”`,
    file: 'story',
    edits: [{ span, text: JSON.stringify(name) }],
    isSure: name === meant,
  }));
}
