import { decodeNamedCharacterReference } from 'decode-named-character-reference';
import type { Span } from '../../text/span.ts';
import type { UnitPlaces } from './markdown-node.ts';

/** Where each unit of a text with escapes, character references or trimmed lines stands in its source, at `span`. */
export function unitPlaces(value: string, source: string, span: Span): UnitPlaces {
  const places = new Places();
  let at = span.start;
  let done = 0;
  while (done < value.length && at < span.end) {
    const unit = source[at];
    const wanted = value[done];
    if (wanted === '\n' || wanted === '\r') {
      const lineEnd = skipped(source, at, span.end, ' \t');
      if (source[lineEnd] === wanted) {
        const crlf = wanted === '\r' && value[done + 1] === '\n' && source[lineEnd + 1] === '\n';
        const length = crlf ? 2 : 1;
        for (let place = lineEnd; place < lineEnd + length; place++) places.add(1, place, place + 1);
        done += length;
        // The next line's indentation is not part of the text.
        at = skipped(source, lineEnd + length, span.end, ' \t');
        continue;
      }
    }
    const length = unit === '&' ? referenceLength(source, at) : unit === '\\' ? escapeLength(source, at) : 1;
    const meant = length === 1 ? 1 : meantLength(source.slice(at, at + length));
    places.add(Math.min(meant, value.length - done), at, Math.min(at + length, span.end));
    done += meant;
    at += length;
  }
  if (done < value.length) places.add(value.length - done, span.end, span.end);
  return places;
}

class Places implements UnitPlaces {
  readonly starts: number[] = [];
  readonly ends: number[] = [];

  add(units: number, start: number, end: number): void {
    for (let unit = 0; unit < units; unit++) {
      this.starts.push(start);
      this.ends.push(end);
    }
  }
}

function skipped(source: string, start: number, end: number, marks: string): number {
  let at = start;
  while (at < end && marks.includes(source.charAt(at))) at++;
  return at;
}

function escapeLength(source: string, at: number): number {
  return /^[!-/:-@[-`{-~]$/.test(source.charAt(at + 1)) ? 2 : 1;
}

const reference = /&(?:#[xX][0-9a-fA-F]{1,6}|#[0-9]{1,7}|[A-Za-z][A-Za-z0-9]{1,31});/y;

/** The length of the character reference at `at`, such as `&eacute;`; 1 when there is none. */
function referenceLength(source: string, at: number): number {
  reference.lastIndex = at;
  const found = reference.exec(source)?.[0];
  if (found === undefined) return 1;
  return found[1] === '#' || decodeNamedCharacterReference(found.slice(1, -1)) !== false ? found.length : 1;
}

/** How many units an escape or a reference stands for. */
function meantLength(written: string): number {
  if (written.startsWith('\\')) return 1;
  if (written.startsWith('&#')) {
    const hexadecimal = written[2] === 'x' || written[2] === 'X';
    const code = Number.parseInt(written.slice(hexadecimal ? 3 : 2, -1), hexadecimal ? 16 : 10);
    return code > 0xffff && code <= 0x10ffff && (code & 0xfffe) !== 0xfffe ? 2 : 1;
  }
  return (decodeNamedCharacterReference(written.slice(1, -1)) || ' ').length;
}
