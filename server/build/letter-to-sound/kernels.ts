import { readFileSync } from 'node:fs';
import createAssembler from 'wabt';

/** The network's arithmetic in WebAssembly, four floats at a time; places and sizes count floats, sizes in sixteens. */
export interface Kernels {
  /** The whole memory. Reserve before use: reserving may replace it. */
  readonly floats: Float32Array;
  /** Makes room for runs of floats, all zero, and gives their places. */
  reserve(sizes: readonly number[]): number[];
  /** Adds `factor` times the floats at `source` to those at `target`. */
  addScaled(target: number, source: number, size: number, factor: number): void;
  /** The sum of the products of two runs of floats. */
  dot(left: number, right: number, size: number): number;
}

/** Assembles `kernels.wat`, with a memory of its own. */
export async function createKernels(): Promise<Kernels> {
  const source = new URL('./kernels.wat', import.meta.url);
  const assembler = await createAssembler();
  const { buffer } = assembler
    .parseWat('kernels.wat', readFileSync(source, 'utf8'), { simd: true })
    .toBinary({});
  const { instance } = await WebAssembly.instantiate(Uint8Array.from(buffer));
  return new AssembledKernels(instance.exports as unknown as KernelExports);
}

interface KernelExports {
  readonly memory: WebAssembly.Memory;
  readonly addScaled: (target: number, source: number, sourceEnd: number, factor: number) => void;
  readonly dot: (left: number, right: number, rightEnd: number) => number;
}

const floatBytes = 4;
const pageBytes = 65_536;

class AssembledKernels implements Kernels {
  floats: Float32Array;
  readonly #exports: KernelExports;
  #end = 0;

  constructor(exports: KernelExports) {
    this.#exports = exports;
    this.floats = new Float32Array(exports.memory.buffer);
  }

  readonly addScaled = (target: number, source: number, size: number, factor: number): void =>
    this.#exports.addScaled(target * floatBytes, source * floatBytes, (source + size) * floatBytes, factor);

  readonly dot = (left: number, right: number, size: number): number =>
    this.#exports.dot(left * floatBytes, right * floatBytes, (right + size) * floatBytes);

  reserve(sizes: readonly number[]): number[] {
    const places = sizes.map((size) => {
      const place = this.#end;
      this.#end += Math.ceil(size / 16) * 16;
      return place;
    });
    const missing = this.#end * floatBytes - this.#exports.memory.buffer.byteLength;
    if (missing > 0) this.#exports.memory.grow(Math.ceil(missing / pageBytes));
    this.floats = new Float32Array(this.#exports.memory.buffer);
    return places;
  }
}
