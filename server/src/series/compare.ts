import type { Standing } from './standing.ts';

/** What another sequence makes of a story. */
export type Turn =
  /** It falls short now and would pass. */
  | 'gains'
  /** It passes now and would fall short, or its lesson would be gone. */
  | 'loses'
  /** It passes or falls short as before, with a larger or smaller readable share. */
  | 'rises'
  | 'falls'
  | 'stays';

/** A story under two sequences; a standing is absent where that sequence lacks the story's lesson. */
export interface Comparison {
  readonly turn: Turn;
  readonly before?: Standing;
  readonly after?: Standing;
}

/** Compares how a story stands under two sequences, or before and after a change of one. */
export function compareStandings(before: Standing | undefined, after: Standing | undefined): Comparison {
  const both = { ...(before && { before }), ...(after && { after }) };
  const passed = before?.passes === true;
  const passes = after?.passes === true;
  if (passed !== passes) return { turn: passes ? 'gains' : 'loses', ...both };
  const change = (after?.readable ?? 0) - (before?.readable ?? 0);
  if (change === 0) return { turn: 'stays', ...both };
  return { turn: change > 0 ? 'rises' : 'falls', ...both };
}
