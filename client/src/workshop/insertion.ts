/** A word as it is written between what stands before and after the caret: with spaces, and a capital at a sentence's start. */
export function wordInsertion(before: string, word: string, after: string): string {
  const isStart = /(?:^|[.!?]["'\u2019\u201d]*\s*)$/.test(before);
  const written = isStart ? word.charAt(0).toUpperCase() + word.slice(1) : word;
  const left = /[\p{L}\p{N},;:.!?]["'\u2019\u201d]?$/u.test(before) ? ' ' : '';
  const right = /^[\p{L}\p{N}]/u.test(after) ? ' ' : '';
  return `${left}${written}${right}`;
}

/** A note for the teacher as a block quote of its own, to be put at the end of a line; `next` is the line after it. */
export function noteInsertion(line: string, text: string, next: string | undefined): string {
  const before = line.trim() === '' ? '' : '\n\n';
  const after = next === undefined || next.trim() === '' ? '' : '\n';
  return `${before}> ${text}${after}`;
}
