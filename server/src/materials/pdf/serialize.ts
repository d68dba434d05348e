/** Bytes of a text whose every character is below 256, one byte each. */
export function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at++) bytes[at] = text.charCodeAt(at);
  return bytes;
}

/** A number as PDF writes it: at most three decimals, never with an exponent. */
export function pdfNumber(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Object.is(rounded, -0) ? '0' : String(rounded);
}

/** Several numbers with spaces between them. */
export function pdfNumbers(...values: readonly number[]): string {
  return values.map(pdfNumber).join(' ');
}

/** A text for people (a title, an alternative text), in UTF-16 where ASCII does not do. */
export function pdfText(text: string): string {
  if (/^[ -~]*$/.test(text)) return `(${text.replace(/[\\()]/g, '\\$&')})`;
  let hexadecimal = 'FEFF';
  for (let at = 0; at < text.length; at++) hexadecimal += hex(text.charCodeAt(at), 4);
  return `<${hexadecimal}>`;
}

/** A whole number in hexadecimal, filled up with zeros. */
export function hex(value: number, digits: number): string {
  return value.toString(16).toUpperCase().padStart(digits, '0');
}
