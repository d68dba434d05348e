/**
 * A text as it is printed: straight quotation marks and apostrophes become curly ones, three stops an ellipsis, two or
 * three hyphens a dash; letters with accents are single characters, and characters without a shape of their own are left
 * out. Everything else stays as it is, and the text that can be taken out of the document is this text.
 */
export function typographic(text: string): string {
  const plain = text
    .normalize('NFC')
    .replace(/\u00ad|[\u200b-\u200d]|\u2060|\ufe0e|\ufe0f|\ufeff/g, '')
    .replace(/[\u00a0\u2007\u202f\s]+/g, ' ')
    .replace(/(?<!\.)\.\.\.(?!\.)/g, '…')
    .replace(/(?<!-)---?(?!-)/g, '—');
  let printed = '';
  for (let at = 0; at < plain.length; at++) {
    const unit = plain.charAt(at);
    if (unit === '"') printed += opens(printed) ? '“' : '”';
    else if (unit === "'") printed += opens(printed) && !isElision(plain.slice(at + 1)) ? '‘' : '’';
    else printed += unit;
  }
  return printed;
}

/** True where a quotation mark can only be an opening one. */
function opens(before: string): boolean {
  return before === '' || /[\s([{“‘—–/-]$/.test(before);
}

/** Words that begin with an apostrophe because letters are left out; in quotation marks of their own they are no such words. */
function isElision(after: string): boolean {
  if (/^n['’]/i.test(after)) return true;
  const isWord = /^(?:tis|twas|twere|twill|em|til|till|cause|bout|round|neath|\d+s?)\b/i.test(after);
  return isWord && !/^\w+['’]/.test(after);
}
