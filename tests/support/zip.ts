import { inflateRawSync } from 'node:zlib';

/**
 * The files of a zip archive by their paths. It reads what packagers write: stored or deflated files, no encryption, no
 * 64-bit sizes.
 *
 * @throws Error when the bytes are no such archive.
 */
export function readZip(bytes: Buffer): ReadonlyMap<string, Buffer> {
  const files = new Map<string, Buffer>();
  const end = bytes.lastIndexOf('PK\u0005\u0006', undefined, 'latin1');
  if (end < 0) throw new Error('This is no zip archive.');
  let entry = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    const method = bytes.readUInt16LE(entry + 10);
    const size = bytes.readUInt32LE(entry + 20);
    const nameLength = bytes.readUInt16LE(entry + 28);
    const name = bytes.toString('utf8', entry + 46, entry + 46 + nameLength);
    const local = bytes.readUInt32LE(entry + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const packed = bytes.subarray(start, start + size);
    if (method !== 0 && method !== 8) throw new Error(`${name} is packed in a way that is not read here.`);
    if (!name.endsWith('/')) files.set(name, method === 0 ? packed : inflateRawSync(packed));
    entry += 46 + nameLength + bytes.readUInt16LE(entry + 30) + bytes.readUInt16LE(entry + 32);
  }
  return files;
}
