import type { PreviewAnswer } from '../../../../server/src/editor/workshop/protocol.ts';

/** The pictures of the pages, as addresses that this page alone can load. */
export class Pictures {
  #byKey = new Map<string, string>();
  #keys = new Map<string, string>();

  /** Takes in what an answer brings, and lets go of what it does not name. */
  take(pictures: PreviewAnswer['pictures']): void {
    const kept = new Map<string, string>();
    for (const { key, data } of pictures) {
      const known = this.#byKey.get(key);
      if (known !== undefined) kept.set(key, known);
      else if (data !== undefined) kept.set(key, URL.createObjectURL(blobOf(data)));
    }
    for (const [key, url] of this.#byKey) if (!kept.has(key)) URL.revokeObjectURL(url);
    this.#byKey = kept;
    this.#keys = new Map(pictures.map(({ address, key }) => [address, key]));
  }

  /** Where the picture is that a story names; empty when there is none. */
  urlOf(address: string): string {
    return this.#byKey.get(this.#keys.get(address) ?? '') ?? '';
  }
}

function blobOf({ type, base64 }: { readonly type: string; readonly base64: string }): Blob {
  return new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type });
}
