import { describe, expect, it } from 'vitest';
import { compareStandings } from '../../../server/src/series/compare.ts';
import type { Standing } from '../../../server/src/series/standing.ts';

const standing = (passes: boolean, readable: number): Standing => ({
  lesson: '1',
  passes,
  readable,
  target: 0.95,
  failing: [],
});

describe('a story under two sequences', () => {
  it.each([
    ['gains', standing(false, 0.9), standing(true, 1)],
    ['loses', standing(true, 1), standing(false, 0.9)],
    ['loses', standing(true, 1), undefined],
    ['gains', undefined, standing(true, 1)],
    ['rises', standing(false, 0.8), standing(false, 0.9)],
    ['falls', standing(true, 1), standing(true, 0.96)],
    ['falls', standing(false, 0.8), undefined],
    ['stays', standing(true, 1), standing(true, 1)],
    ['stays', undefined, undefined],
  ])('%s', (turn, before, after) => {
    expect(compareStandings(before, after).turn).toBe(turn);
  });
});
