import type { Part, Reading } from '../../server/src/phonics/reading.ts';
import { packagePhonics } from './package-phonics.ts';

/**
 * What is wrong with a step from one word to the next, judged from letters and sounds alone and without the code that
 * builds chains: some reading of the one becomes some reading of the other by one grapheme changed, added or dropped, and
 * without that grapheme both words have the same letters and the same sounds. Nothing when it is right.
 */
export function stepTrouble(
  before: string,
  after: string,
  isReadable: (reading: Reading) => boolean,
): string | undefined {
  const pairs = packagePhonics
    .readingsOf(before)
    .filter(isReadable)
    .flatMap((left) =>
      packagePhonics
        .readingsOf(after)
        .filter(isReadable)
        .map((right) => ({ left, right })),
    );
  if (pairs.length === 0) return `${before} or ${after} cannot be sounded out`;
  return pairs.some(({ left, right }) => isOneStep(before, left, after, right))
    ? undefined
    : `${before} to ${after} is not one grapheme`;
}

function isOneStep(before: string, left: Reading, after: string, right: Reading): boolean {
  const change = left.parts.length - right.parts.length;
  if (before === after || Math.abs(change) > 1) return false;
  const lefts = change >= 0 ? without(before, left) : [{ letters: before, sounds: soundsOf(left.parts) }];
  const rights = change <= 0 ? without(after, right) : [{ letters: after, sounds: soundsOf(right.parts) }];
  return lefts.some((one, at) =>
    rights.some(
      (other, place) =>
        one.letters === other.letters && one.sounds === other.sounds && (change !== 0 || at === place),
    ),
  );
}

/** The word without each of its graphemes in turn: letters cut out by their places, a mark where they stood. */
function without(word: string, { parts }: Reading): readonly { letters: string; sounds: string }[] {
  return parts.map((gone, at) => {
    const isGone = (place: number): boolean =>
      gone.spans.some(([start, end]) => place >= start && place < end);
    return {
      letters: [...word].filter((_, place) => !isGone(place)).join(''),
      sounds: soundsOf(parts.filter((_, place) => place !== at)),
    };
  });
}

function soundsOf(parts: readonly Part[]): string {
  return parts
    .map(({ letters, sounds }) => `${letters}=${packagePhonics.soundClass(letters, sounds)}`)
    .join(' ');
}
