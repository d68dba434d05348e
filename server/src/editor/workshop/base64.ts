/** Bytes as base 64. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  // Too many arguments at once overflow the stack.
  for (let at = 0; at < bytes.length; at += 8192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}

/** The bytes of base 64; throws where it is none. */
export function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}
