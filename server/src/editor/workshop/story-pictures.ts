import type { Connection } from 'vscode-languageserver';
import type { PictureFile } from '../../materials/order.ts';
import type { Review } from '../../review/review.ts';
import { fromBase64 } from './base64.ts';
import { type ReadPicturesParams, type ReadPicturesResult, readPicturesRequest } from './protocol.ts';

/**
 * The pictures of stories, read by the client. Those of the story that was asked for last are kept, so that a preview
 * does not read them again after each change of the text; the client says whether a file is as it was.
 */
export class StoryPictures {
  readonly #connection: Pick<Connection, 'sendRequest'>;
  #uri = '';
  #kept: Kept = new Map();

  constructor(connection: Pick<Connection, 'sendRequest'>) {
    this.#connection = connection;
  }

  /** The pictures of a story by their addresses; the same file gives the same bytes object. */
  async of(uri: string, { story }: Review): Promise<ReadonlyMap<string, PictureFile>> {
    const shown = story.pages.flatMap(({ page }) => page.illustrations.map(({ address }) => address));
    const addresses = [...new Set(shown)].filter((address) => address !== '');
    const before: Kept = this.#uri === uri ? this.#kept : new Map();
    if (addresses.length === 0) return new Map();
    const stamps = addresses.map((address) => before.get(address)?.stamp ?? null);
    const params: ReadPicturesParams = { uri, addresses, stamps };
    const read = await this.#connection.sendRequest<ReadPicturesResult>(readPicturesRequest, params);
    const kept = new Map<string, KeptPicture>();
    const files = addresses.map((address, index): [string, PictureFile] => {
      const result = read[index] ?? { trouble: 'cannot be read' };
      if ('trouble' in result) return [address, result];
      const known = before.get(address);
      if ('isUnchanged' in result) {
        if (known === undefined) return [address, { trouble: 'cannot be read' }];
        kept.set(address, known);
        return [address, known.file];
      }
      const file = { bytes: fromBase64(result.base64) };
      kept.set(address, { stamp: result.stamp, file });
      return [address, file];
    });
    this.#uri = uri;
    this.#kept = kept;
    return new Map(files);
  }

  /** A name for the picture of an address as it is now: another when the file has changed. */
  keyOf(address: string): string {
    return `${this.#uri} ${address} ${this.#kept.get(address)?.stamp ?? ''}`;
  }
}

interface KeptPicture {
  readonly stamp: string;
  readonly file: PictureFile;
}

type Kept = ReadonlyMap<string, KeptPicture>;
