import { shownPercent } from '../review/figures.ts';
import type { Finding } from '../review/review.ts';
import { counted, lessonLabel, listed } from '../review/wording.ts';
import { isUnread } from '../story/read-page.ts';
import type { Story } from '../story/story.ts';
import { storyTitle } from '../story/story-title.ts';
import { lineIndex } from '../text/line-index.ts';
import type { CheckedAll } from './check-sarif.ts';
import type { CheckedStory } from './check-story.ts';
import type { Complaint } from './complaint.ts';
import type { Host } from './host.ts';
import { styled } from './styled.ts';

/** What `check` writes for people: each story with its findings, then a summary. */
export function checkPage({ stories, complaints, leftAlone }: CheckedAll, { hasColour }: Host): string {
  const style = styled(hasColour);
  const paragraphs = stories.map(({ path, review }) => {
    const { story, taught, counts, readable, target, passes, findings } = review;
    const place = lineIndex(story.text);
    const title = storyTitle(story);
    const name = title === undefined ? lessonLabel(taught.lesson) : `${title}, ${lessonLabel(taught.lesson)}`;
    const share =
      counts.words === 0
        ? 'no words yet'
        : `${shownPercent(readable)} % of ${counted(counts.words, 'word')} readable, target ${percent(target)} %`;
    const verdict = passes ? style.good('passes') : style.bad('falls short');
    return [
      `${style.strong(path)}  ${name}: ${share}: ${verdict}`,
      ...inTelling(findings, story).map(({ span, message, rule }) => {
        const { line, column } = place(span.start);
        return `${path}:${line}:${column}  ${message}  ${style.faint(`[${rule}]`)}`;
      }),
      '',
    ];
  });
  return stories.length === 0
    ? ''
    : `${[...paragraphs.flat(), summary(stories) + unread(complaints) + others(leftAlone)].join('\n')}\n`;
}

/** In the order of the text; but that the text is not read to its end comes first, since no figure holds for all of it. */
function inTelling(findings: readonly Finding[], story: Story): readonly Finding[] {
  const rest = story.pages.find(({ page }) => isUnread(page));
  const isCut = ({ span }: Finding): boolean => span.start === rest?.start;
  return rest === undefined
    ? findings
    : [...findings.filter(isCut), ...findings.filter((finding) => !isCut(finding))];
}

function summary(stories: readonly CheckedStory[]): string {
  const passing = stories.filter(({ review }) => review.passes).length;
  const short = stories.length - passing;
  const checked = `${counted(stories.length, 'story', 'stories')} checked by ${sequencesOf(stories)}`;
  if (short === 0) return `${checked}: ${stories.length === 1 ? 'it passes' : 'all pass'}.`;
  if (passing === 0) return `${checked}: ${stories.length === 1 ? 'it falls' : 'all fall'} short.`;
  return `${checked}: ${passing} ${passing === 1 ? 'passes' : 'pass'}, ${short} ${short === 1 ? 'falls' : 'fall'} short.`;
}

/** The sequences that the stories were read by, so that nobody takes another for the nearest. */
function sequencesOf(stories: readonly CheckedStory[]): string {
  const paths = [...new Set(stories.map(({ sequence }) => sequence.path))];
  return paths.length > 3 ? counted(paths.length, 'sequence') : listed(paths);
}

/** Files that could not be checked; why stands in the error output. */
function unread(complaints: readonly Complaint[]): string {
  const { size } = new Set(complaints.map(({ path }) => path));
  return size === 0 ? '' : ` ${counted(size, 'file')} could not be checked.`;
}

/** So that a story whose lesson was forgotten is missed. */
function others({ length }: readonly string[]): string {
  if (length === 0) return '';
  return ` ${counted(length, 'markdown file')} ${length === 1 ? 'names' : 'name'} no lesson and ${length === 1 ? 'was' : 'were'} left alone.`;
}

/** A target as its writer gave it, with at most two decimals. */
function percent(share: number): string {
  return String(Math.round(share * 10_000) / 100);
}
