/** A word or sentence without the full stop at its end. */
export function withoutStop(text: string): string {
  return text.endsWith('.') ? text.slice(0, -1) : text;
}
