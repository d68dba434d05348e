/**
 * The one form in which marks are compared: curly and angled quotation marks are the straight ones, three stops are an
 * ellipsis, dashes of every length are one dash. White space around it is dropped.
 */
export function plainMark(mark: string): string {
  const bare = mark.trim();
  if (/^[“”„‟«»＂]$/u.test(bare)) {
    return '"';
  }
  if (/^[‘’‚‛ʼ`]$/u.test(bare)) {
    return "'";
  }
  if (/^(?:\.{3}|…)$/u.test(bare)) {
    return '…';
  }
  return /^(?:--|---|[–—―])$/u.test(bare) ? '—' : bare;
}

/** True for one mark of punctuation: neither a letter, nor a digit, nor white space, nor several marks. */
export function isMark(mark: string): boolean {
  return /^[\p{P}\p{S}]$/u.test(plainMark(mark));
}
