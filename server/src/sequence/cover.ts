import type { TaughtSpelling } from './taught.ts';
import type { GraphemeRow } from './word-demands.ts';

/** A stretch of a word's graphemes read by one spelling; no spelling when no lesson teaches the grapheme. */
export interface CoverUnit {
  /** Index of its first grapheme, and just past its last. */
  readonly from: number;
  readonly to: number;
  readonly spelling?: TaughtSpelling;
}

/**
 * The way through a word that asks least of the lessons after `now`: as few graphemes as possible that no lesson teaches,
 * then the earliest lesson by which all others are taught, then as few units as possible, so that a taught chunk goes
 * before its single graphemes. When all units are taught by `now`, the word can be sounded out.
 */
export function coverOf(row: GraphemeRow, now: number): readonly CoverUnit[] {
  const { graphemes, chunks } = row;
  if (chunks.length === 0) {
    return graphemes.map((_, at) => single(row, at, now));
  }
  const ways: Way[] = [{ missing: 0, latest: now, units: 0 }];
  for (let to = 1; to <= graphemes.length; to++) {
    let best = extended(ways[to - 1], single(row, to - 1, now));
    for (const chunk of chunks) {
      if (chunk.to === to) {
        const way = extended(ways[chunk.from], chunk);
        best = isBetter(way, best) ? way : best;
      }
    }
    ways.push(best);
  }
  const units: CoverUnit[] = [];
  for (let way = ways.at(-1); way?.last !== undefined; way = ways[way.last.from]) {
    units.push(way.last);
  }
  return units.reverse();
}

/** The best way to read a word from its head up to some grapheme. */
interface Way {
  readonly missing: number;
  /** Index of the latest lesson it waits for. */
  readonly latest: number;
  readonly units: number;
  readonly last?: CoverUnit;
}

function extended(way: Way | undefined, last: CoverUnit): Way {
  return {
    missing: (way?.missing ?? 0) + (last.spelling === undefined ? 1 : 0),
    latest: Math.max(way?.latest ?? 0, last.spelling?.lesson.index ?? 0),
    units: (way?.units ?? 0) + 1,
    last,
  };
}

function isBetter(left: Way, right: Way): boolean {
  return (left.missing - right.missing || left.latest - right.latest || left.units - right.units) < 0;
}

/** The grapheme by itself: by the spelling it prefers if that is taught by `now`, else by the earlier of its two. */
function single(row: GraphemeRow, at: number, now: number): CoverUnit {
  const grapheme = row.graphemes[at];
  const preferred = grapheme?.preferred;
  const other = grapheme?.other;
  const takesPreferred =
    other === undefined ||
    (preferred !== undefined &&
      (preferred.lesson.index <= now || preferred.lesson.index <= other.lesson.index));
  const spelling = takesPreferred ? preferred : other;
  return { from: at, to: at + 1, ...(spelling === undefined ? {} : { spelling }) };
}
