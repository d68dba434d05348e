import type { StoriesParams, StoryStanding, WhatIfResult } from '../../../server/src/editor/protocol.ts';

/** A story in a list to choose from. */
export interface StoryRow {
  readonly uri: string;
  readonly label: string;
  readonly description: string;
  readonly detail: string;
}

/** The stories that fall short, those that turned last first. */
export function failingRows({ failing, turned }: StoriesParams): readonly StoryRow[] {
  const lost = new Set(turned.filter(({ turn }) => turn === 'loses').map(({ uri }) => uri));
  return [...failing]
    .sort((left, right) => Number(lost.has(right.uri)) - Number(lost.has(left.uri)))
    .map(({ uri, title, lesson, why }) => ({
      uri,
      label: title,
      description: `lesson ${lesson}${lost.has(uri) ? ', since the last change' : ''}`,
      detail: why,
    }));
}

/** The stories that would stand otherwise: those that lose, those that gain, then the rest. */
export function changeRows({ changed }: WhatIfResult): readonly StoryRow[] {
  return turns.flatMap(({ turn, said }) =>
    changed
      .filter((each) => each.turn === turn)
      .map(({ uri, title, before, after }) => ({
        uri,
        label: `${title}: ${said}`,
        description: `${percent(before)} → ${percent(after)} % readable`,
        detail: after === undefined ? 'its lesson is not in the sequence' : after.why,
      })),
  );
}

const turns = [
  { turn: 'loses', said: 'would fall short' },
  { turn: 'gains', said: 'would pass' },
  { turn: 'falls', said: 'less readable' },
  { turn: 'rises', said: 'more readable' },
] as const;

/** One decimal, rounded down; a hyphen where there is no share. */
function percent(standing: StoryStanding | undefined): string {
  return standing === undefined ? '-' : (Math.floor(standing.readable * 1000 + 1e-9) / 10).toFixed(1);
}
