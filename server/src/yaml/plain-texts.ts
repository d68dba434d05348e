import { codeUnits } from '../text/code-units.ts';
import type { Span } from '../text/span.ts';
import type { YamlText } from './yaml-node.ts';

/** A key and where its colon stands. */
export interface KeyPlace {
  readonly key: YamlText;
  readonly colon: number;
}

/** A text in quotation marks on one line, without escapes but the doubled single mark. */
export function quotedText(text: string, start: number, end: number): YamlText | undefined {
  const mark = text.charCodeAt(start);
  let doubled = false;
  for (let at = start + 1; at < end; at++) {
    const unit = text.charCodeAt(at);
    if (unit === 92 && mark === doubleQuote) return undefined;
    if (unit !== mark) continue;
    if (mark === singleQuote && text.charCodeAt(at + 1) === singleQuote) {
      doubled = true;
      at++;
      continue;
    }
    const written = text.slice(start + 1, at);
    return {
      kind: 'text',
      text: doubled ? written.replaceAll("''", "'") : written,
      style: 'quoted',
      span: { start, end: at + 1 },
    };
  }
  return undefined;
}

/** A text without quotes that ends with its line or at a comment. */
export function plainText(text: string, start: number, lineEnd: number): YamlText | undefined {
  if (!mayBegin(text.charCodeAt(start))) return undefined;
  let end = lineEnd;
  for (let at = start + 1; at < lineEnd; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon && (at + 1 >= lineEnd || text.charCodeAt(at + 1) === space)) return undefined;
    if (unit === numberSign && text.charCodeAt(at - 1) === space) {
      end = at;
      break;
    }
  }
  return plain(text, { start, end });
}

/** A text without quotes that ends at a comma or a closing sign of its own line. */
export function plainTextInBrackets(text: string, start: number, lineEnd: number): YamlText | undefined {
  if (!mayBegin(text.charCodeAt(start))) return undefined;
  for (let at = start + 1; at < lineEnd; at++) {
    const unit = text.charCodeAt(at);
    if (
      unit === colon ||
      unit === numberSign ||
      unit === openBracket ||
      unit === openBrace ||
      unit === carriageReturn
    ) {
      return undefined;
    }
    if (unit === comma || unit === closeBracket || unit === closeBrace)
      return plain(text, { start, end: at });
  }
  const next = /\S/.exec(text.slice(lineEnd))?.[0];
  return next === ']' || next === '}' ? plain(text, { start, end: lineEnd }) : undefined;
}

/** A key of letters, digits, spaces, points, hyphens, low lines and apostrophes, or in quotes, up to its colon. */
export function keyAt(text: string, start: number, lineEnd: number): KeyPlace | undefined {
  const first = text.charCodeAt(start);
  if (first === doubleQuote || first === singleQuote) {
    const key = quotedText(text, start, lineEnd);
    const at = key?.span.end ?? 0;
    return key !== undefined && at - start < longestKey && isColon(text, at, lineEnd)
      ? { key, colon: at }
      : undefined;
  }
  if (!isLetterOrDigit(first)) return undefined;
  const most = Math.min(lineEnd, start + longestKey);
  for (let at = start + 1; at < most; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon) {
      return isColon(text, at, lineEnd) ? { key: plain(text, { start, end: at }), colon: at } : undefined;
    }
    const isPlain = isLetterOrDigit(unit) || unit === space || unit === hyphen || unit === 95 || unit === 46;
    if (!isPlain && unit !== singleQuote) return undefined;
  }
  return undefined;
}

/** The longest key that YAML allows on the line of its value is 1,024. */
const longestKey = 200;

const {
  carriageReturn,
  closeBrace,
  closeBracket,
  colon,
  comma,
  doubleQuote,
  hyphen,
  numberSign,
  openBrace,
  openBracket,
  singleQuote,
  space,
} = codeUnits;

function plain(text: string, { start, end }: Span): YamlText {
  let last = end;
  while (text.charCodeAt(last - 1) === space) last--;
  return { kind: 'text', text: text.slice(start, last), style: 'plain', span: { start, end: last } };
}

/** Letters, digits and the signs that mean nothing in front of a text. */
function mayBegin(unit: number): boolean {
  return isLetterOrDigit(unit) || unit === 40 || unit === 46 || unit === 47 || unit === 95 || unit === 126;
}

function isLetterOrDigit(unit: number): boolean {
  return (
    (unit >= 97 && unit <= 122) || (unit >= 65 && unit <= 90) || (unit >= 48 && unit <= 57) || unit >= 0xa1
  );
}

function isColon(text: string, at: number, lineEnd: number): boolean {
  return text.charCodeAt(at) === colon && (at + 1 >= lineEnd || text.charCodeAt(at + 1) === space);
}
