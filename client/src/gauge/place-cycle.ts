import type { ProtocolRange } from '../../../server/src/editor/protocol.ts';

/** Where an item's activation leads, and which of its places that is, from 1. */
export interface CycledPlace {
  readonly range: ProtocolRange;
  readonly number: number;
  readonly of: number;
}

/** Leads through the places of an item: the first at its first activation, then one after the other, and round. */
export class PlaceCycle {
  #key: string | undefined;
  #index = 0;

  /** The next place of the item; nothing when it has none. Another item starts at its first place. */
  next(key: string, places: readonly ProtocolRange[]): CycledPlace | undefined {
    this.#index = key === this.#key ? this.#index + 1 : 0;
    this.#key = key;
    // Places may have gone since the last activation.
    if (this.#index >= places.length) this.#index = 0;
    const range = places[this.#index];
    return range && { range, number: this.#index + 1, of: places.length };
  }
}
