/**
 * A short name for a text by its content, the same for the same text: 53 bits of two multiplicative hashes, after the
 * finalizer of MurmurHash3 (Austin Appleby, public domain). No protection against a text that is made to collide.
 */
export function textHash(text: string): string {
  let high = 0x9e3779b9;
  let low = 0x85ebca6b;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    high = Math.imul(high ^ unit, 0x85ebca77);
    low = Math.imul(low ^ unit, 0xc2b2ae3d);
  }
  high = mixed(high ^ text.length);
  low = mixed(low ^ Math.imul(high, 0x27d4eb2f));
  return ((high >>> 11) * 4294967296 + (low >>> 0)).toString(36);
}

function mixed(value: number): number {
  let bits = value;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return bits ^ (bits >>> 16);
}
