import { counted, lessonLabel } from '../review/wording.ts';
import type { TaughtSpelling } from '../sequence/taught.ts';
import type { Gap, StoryCoverage } from './series.ts';
import { shortfall, times } from './standing.ts';

/** A gap as a sentence for the writer. */
export function gapMessage(gap: Gap): string {
  switch (gap.kind) {
    case 'lesson-without-story':
      return `No story is written for ${lessonLabel(gap.lesson)}.`;
    case 'never-used':
      return `${spellingLabel(gap.spelling)} (${lessonLabel(gap.spelling.lesson)}) is used in no story.`;
    case 'not-practised': {
      const where = gap.stories === 1 ? 'the story' : `any of the ${gap.stories} stories`;
      return `${spellingLabel(gap.spelling)} is not used in ${where} of its own ${lessonLabel(gap.spelling.lesson)}.`;
    }
    case 'not-again': {
      const next = gap.stories === 1 ? 'the next story' : `the next ${gap.stories} stories`;
      return `${spellingLabel(gap.spelling)} does not come again in ${next} after ${storyLabel(gap.after)}.`;
    }
    case 'never-met':
      return `“${gap.word.word}” (${lessonLabel(gap.word.lesson)}) is in no story from its lesson on.`;
    case 'unseen': {
      const where =
        gap.stories === 1
          ? `in ${storyLabel(gap.from)}`
          : `from ${storyLabel(gap.from)} to ${storyLabel(gap.to)}`;
      return `“${gap.word.word}” is not seen for ${counted(gap.stories, 'story', 'stories')}, ${where}.`;
    }
    case 'seldom-met':
      return `“${gap.word.first.text}” is met ${times(gap.word.count)} in the whole series, in ${storyLabel(gap.word.firstStory)}.`;
    case 'target-missed':
      return `${storyLabel(gap.story)} falls short: ${shortfall(gap.story)}.`;
  }
}

/** What a gap is about, to stand below its heading: `igh as in light (21)`; nothing where only the sentence will do. */
export function gapLabel(gap: Gap): string | undefined {
  switch (gap.kind) {
    case 'lesson-without-story':
      return gap.lesson.name;
    case 'never-used':
    case 'not-practised':
      return `${spellingLabel(gap.spelling)} (${gap.spelling.lesson.name})`;
    case 'never-met':
      return `${gap.word.word} (${gap.word.lesson.name})`;
    case 'seldom-met':
      return `${gap.word.first.text} (${gap.word.firstStory.lesson.name})`;
    default:
      return undefined;
  }
}

/** The names of the kinds of gap, as headings. */
export const gapHeadings: Readonly<Record<Gap['kind'], string>> = {
  'target-missed': 'Stories that fall short',
  'lesson-without-story': 'Lessons without a story',
  'never-used': 'Spellings that no story uses',
  'not-practised': 'Spellings not practised in their own lesson',
  'not-again': 'Spellings that do not come again soon',
  'never-met': 'High-frequency words that no story has',
  unseen: 'High-frequency words not seen for long',
  'seldom-met': 'Words met too seldom',
};

/** `igh as in light`. */
export function spellingLabel({ line }: TaughtSpelling): string {
  return `${line.letters} as in ${line.keyWord}`;
}

/** `The Red Net (lesson 12)`. */
export function storyLabel({ title, lesson }: StoryCoverage): string {
  return `${title} (${lessonLabel(lesson)})`;
}
