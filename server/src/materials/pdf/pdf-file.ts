import { zlibSync } from 'fflate';
import { bytesOf } from './serialize.ts';

/**
 * A PDF file while it is written. It holds no date, no random name and nothing of the machine, so that the same calls
 * always give the same bytes.
 */
export class PdfFile {
  readonly #bodies: (readonly Uint8Array[])[] = [];

  /** Makes room for an object that is put in later; gives its number. */
  reserve(): number {
    this.#bodies.push([]);
    return this.#bodies.length;
  }

  /** Puts an object in; gives its number. */
  add(body: string, number = this.reserve()): number {
    this.#bodies[number - 1] = [bytesOf(body)];
    return number;
  }

  /** Puts a stream in, compressed here unless its entries name a filter already; gives its number. */
  addStream(entries: string, content: Uint8Array, number = this.reserve()): number {
    const isReady = entries.includes('/Filter');
    const data = isReady ? content : zlibSync(content, { level: 6 });
    const filter = isReady ? '' : ' /Filter /FlateDecode';
    this.#bodies[number - 1] = [
      bytesOf(`<< ${entries}${filter} /Length ${data.length} >>\nstream\n`),
      data,
      bytesOf('\nendstream'),
    ];
    return number;
  }

  /** The whole file. Every reserved object must have been put in. */
  bytes(catalog: number, information: number): Uint8Array {
    const chunks: Uint8Array[] = [bytesOf('%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n')];
    let length = chunks[0]?.length ?? 0;
    const push = (chunk: Uint8Array): void => {
      chunks.push(chunk);
      length += chunk.length;
    };
    const rows: string[] = [];
    for (const [index, body] of this.#bodies.entries()) {
      rows.push(`${String(length).padStart(10, '0')} 00000 n \n`);
      push(bytesOf(`${index + 1} 0 obj\n`));
      for (const chunk of body) push(chunk);
      push(bytesOf('\nendobj\n'));
    }
    const size = this.#bodies.length + 1;
    const table = `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}`;
    const trailer = `trailer\n<< /Size ${size} /Root ${catalog} 0 R /Info ${information} 0 R >>\nstartxref\n${length}\n%%EOF\n`;
    push(bytesOf(table + trailer));
    const whole = new Uint8Array(length);
    let at = 0;
    for (const chunk of chunks) {
      whole.set(chunk, at);
      at += chunk.length;
    }
    return whole;
  }
}
