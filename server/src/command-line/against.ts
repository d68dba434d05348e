import { shownPercent } from '../review/figures.ts';
import type { Review } from '../review/review.ts';
import { counted } from '../review/wording.ts';
import { type Comparison, compareStandings, type Turn } from '../series/compare.ts';
import { type Standing, shortfall, standingOf } from '../series/standing.ts';
import type { Story } from '../story/story.ts';
import { storyTitle } from '../story/story-title.ts';
import { jsonLines } from './json.ts';
import type { ReviewedStory } from './stories-of-series.ts';
import { styled } from './styled.ts';

/** Stories under two sequences. */
export interface ComparedStories {
  /** How many pass by the one and not by the other. */
  readonly losing: number;
  /** For people: the stories that differ, those that lose first. `other` names the second sequence. */
  text(other: string, hasColour: boolean): string;
  json(): string;
}

/** Compares each story with its review by another sequence; nothing where that one lacks its lesson. */
export function compareStories(
  stories: readonly ReviewedStory[],
  otherReview: (story: Story) => Review | undefined,
): ComparedStories {
  const rows = stories.map(({ found, review }) => {
    const other = otherReview(review.story);
    const comparison = compareStandings(standingOf(review), other && standingOf(other));
    return { path: found.path, title: storyTitle(review.story) ?? found.path, comparison };
  });
  const losing = rows.filter(({ comparison }) => comparison.turn === 'loses').length;
  return {
    losing,
    text: (other, hasColour) => {
      const style = styled(hasColour);
      const colours: Partial<Record<Turn, (text: string) => string>> = {
        gains: style.good,
        loses: style.bad,
      };
      const shown = turnsShown.flatMap((turn) => rows.filter(({ comparison }) => comparison.turn === turn));
      const gaining = rows.filter(({ comparison }) => comparison.turn === 'gains').length;
      return [
        ...shown.map(({ path, comparison }) => {
          const colour = colours[comparison.turn] ?? ((text: string) => text);
          return `${colour(comparison.turn.padEnd(5))}  ${style.strong(path)}  ${changeIn(comparison)}`;
        }),
        ...(shown.length === 0 ? [] : ['']),
        `By ${other}: ${counted(losing, 'story', 'stories')} ${losing === 1 ? 'loses' : 'lose'}, ${gaining} ${gaining === 1 ? 'gains' : 'gain'}, ${rows.length - losing - gaining} stand as before.`,
        '',
      ].join('\n');
    },
    json: () =>
      jsonLines(
        'stories',
        rows.map(({ path, title, comparison: { turn, before, after } }) => ({
          path,
          title,
          turn,
          before: before ?? null,
          after: after ?? null,
        })),
      ),
  };
}

const turnsShown: readonly Turn[] = ['loses', 'gains', 'falls', 'rises'];

function changeIn({ before, after }: Comparison): string {
  if (after === undefined) return `lesson “${before?.lesson}” is not in that sequence`;
  const shares = `${before === undefined ? '-' : shownPercent(before.readable)} → ${shownPercent(after.readable)} % readable`;
  return after.passes ? shares : `${shares}; ${missed(after)}`;
}

function missed(standing: Standing): string {
  return `falls short: ${shortfall(standing)}`;
}
