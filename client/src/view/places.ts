import type { ProtocolRange } from '../../../server/src/editor/protocol.ts';
import { PlaceCycle } from '../gauge/place-cycle.ts';
import { post } from './editor.ts';

/** Leads from the gauge into the text. */
export class Places {
  readonly #cycle = new PlaceCycle();
  readonly #say: (text: string) => void;
  /** The story the places belong to. */
  uri = '';

  /** @param say tells people who do not see the text where they are. */
  constructor(say: (text: string) => void) {
    this.#say = say;
  }

  /** Shows the next place of an item, selected. */
  showNext(key: string, ranges: readonly ProtocolRange[]): void {
    const place = this.#cycle.next(key, ranges);
    if (place === undefined) return;
    const count = place.of > 1 ? `, place ${place.number} of ${place.of}` : '';
    this.#say(`Line ${place.range.start.line + 1}${count}`);
    post({ type: 'reveal', uri: this.uri, range: place.range, select: true });
  }

  /** Shows a stretch of text without selecting it. */
  showStretch(range: ProtocolRange): void {
    this.#say(`Line ${range.start.line + 1}`);
    post({ type: 'reveal', uri: this.uri, range, select: false });
  }
}
