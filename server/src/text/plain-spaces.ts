/** A text with plain spaces for those that do not break, which word processors set and YAML does not know; as long as before. */
export function withPlainSpaces(text: string): string {
  return text.replace(/[\u00a0\u2007\u202f]/g, ' ');
}
