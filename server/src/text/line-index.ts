/** A place as people and compilers count it: lines and columns from 1, columns in UTF-16 code units. */
export interface LineAndColumn {
  readonly line: number;
  readonly column: number;
}

/** Finds the line and column of an offset; an offset outside the text is moved to its nearer end. */
export type LineIndex = (offset: number) => LineAndColumn;

/** Reads a text's line ends (LF, CRLF and CR, mixed as they come) once; each look-up then takes logarithmic time. */
export function lineIndex(text: string): LineIndex {
  const starts = lineStarts(text);
  return (offset) => {
    const place = Math.min(Math.max(offset, 0), text.length);
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= place) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: place - (starts[low] ?? 0) + 1 };
  };
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === 10 || (unit === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
  }
  return starts;
}
