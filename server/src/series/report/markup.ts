/** A text as HTML or SVG shows it; also between the quotation marks of an attribute. */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** A figure of a picture with at most one decimal. */
export function short(figure: number): string {
  return String(Math.round(figure * 10) / 10);
}
