const lineFeed = 10;
const carriageReturn = 13;

/** Where the line that holds `at` ends: the offset of its line end (LF, CRLF or CR), or the end of the text. */
export function endOfLine(text: string, at: number): number {
  let end = at;
  while (end < text.length) {
    const unit = text.charCodeAt(end);
    if (unit === lineFeed || unit === carriageReturn) break;
    end++;
  }
  return end;
}

/** Where the next line starts, given where a line ends; the end of the text when there is none. */
export function startOfNextLine(text: string, end: number): number {
  if (end >= text.length) return text.length;
  return text.charCodeAt(end) === carriageReturn && text.charCodeAt(end + 1) === lineFeed ? end + 2 : end + 1;
}
