import type { Part } from './reading.ts';

/** Graphemes with what they say, of a reading in whatever form. */
interface Said {
  readonly parts: readonly Pick<Part, 'sounds'>[];
}

/** True for two readings with the same sounds, stress apart, whatever their letters. */
export function areSaidAlike(one: Said, other: Said): boolean {
  return soundsOf(one) === soundsOf(other);
}

function soundsOf({ parts }: Said): string {
  return parts.map(({ sounds }) => sounds.join(' ')).join(' ');
}
