import type { Ending, Part, Reading } from '../phonics/reading.ts';
import { coverOf } from './cover.ts';
import type { Lesson } from './sequence.ts';
import type { TaughtSpelling } from './taught.ts';
import type { TaughtIndex } from './taught-index.ts';
import type { WordDemands } from './word-demands.ts';

/** What a part of a word rests on: a spelling of the sequence, an ending, or nothing that is taught. */
export type PartBasis =
  | { readonly kind: 'spelling'; readonly part: Part; readonly spelling: TaughtSpelling }
  | { readonly kind: 'ending'; readonly part: Part; readonly ending: Ending; readonly lesson?: Lesson }
  | { readonly kind: 'none'; readonly part: Part };

/** For every part of a reading, in order, what it rests on: taught by `now` where it can be, else later, else nothing. */
export function partBases(
  reading: Reading,
  demands: WordDemands,
  now: Lesson,
  index: TaughtIndex,
): readonly PartBasis[] {
  const bases: (PartBasis | undefined)[] = reading.parts.map(() => undefined);
  const baseStart = placeEndings(reading, bases, index);
  for (const { from, to, spelling } of coverOf(demands, now.index)) {
    for (let at = from; at < to; at++) {
      const part = reading.parts[baseStart + at];
      if (part !== undefined && spelling !== undefined) {
        bases[baseStart + at] = { kind: 'spelling', part, spelling };
      }
    }
  }
  return reading.parts.map((part, at) => bases[at] ?? { kind: 'none', part });
}

/** Enters the parts that belong to endings and beginnings; gives the place of the innermost base word's first part. */
function placeEndings(reading: Reading, bases: (PartBasis | undefined)[], index: TaughtIndex): number {
  let start = 0;
  let end = reading.parts.length;
  let inflection = reading.inflection;
  while (inflection !== undefined) {
    const { ending, baseParts } = inflection;
    const innerStart = ending === 'un' || ending === 're' ? end - baseParts : start;
    const innerEnd = innerStart + baseParts;
    const lesson = index.endings.get(ending);
    for (let at = start; at < end; at++) {
      const part = reading.parts[at];
      if ((at < innerStart || at >= innerEnd) && part !== undefined) {
        bases[at] = { kind: 'ending', part, ending, ...(lesson === undefined ? {} : { lesson }) };
      }
    }
    start = innerStart;
    end = innerEnd;
    inflection = inflection.reading.inflection;
  }
  return start;
}
