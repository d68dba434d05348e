/**
 * Where the letters, digits, accents and invisible joiners from `at` on end; `at` itself when no letter or digit stands
 * there. Written out by hand, since compiling the Unicode classes of one regular expression costs more time than
 * reading a whole story: they are only asked about characters beyond ASCII.
 */
export function runEnd(text: string, at: number): number {
  let end = at;
  let kind = kindAt(text, end);
  if (kind !== 'letter' && kind !== 'digit') return at;
  while (kind !== 'other') {
    end += lengthAt(text, end);
    kind = kindAt(text, end);
  }
  return end;
}

/** Where the word at `at` ends, with the apostrophes inside it; `at` itself when there is none. */
export function wordEnd(text: string, at: number): number {
  let end = runEnd(text, at);
  while (end > at && isApostrophe(text[end])) {
    const next = runEnd(text, end + 1);
    if (next === end + 1) break;
    end = next;
  }
  return end;
}

/** Where the number at `at` ends, as in 7, 3rd, 3.5, 1,000 and 7:30; `at` itself when no digit stands there. */
export function numberEnd(text: string, at: number): number {
  if (kindAt(text, at) !== 'digit') return at;
  let end = runEnd(text, at);
  while ('.,:/'.includes(text[end] ?? ' ') && kindAt(text, end + 1) === 'digit') end = runEnd(text, end + 1);
  return end;
}

/** Where an abbreviation such as a.m. or U.S. ends: two or more letters, each with its stop; else `at` itself. */
export function dottedEnd(text: string, at: number): number {
  let end = at;
  let letters = 0;
  while (kindAt(text, end) === 'letter') {
    const stop = end + lengthAt(text, end);
    if (text[stop] !== '.') return at;
    end = stop + 1;
    letters++;
  }
  return letters < 2 || kindAt(text, end) === 'digit' ? at : end;
}

/** True when a capital stands at `at`. */
export function isCapitalAt(text: string, at: number): boolean {
  const character = text.slice(at, at + lengthAt(text, at));
  return character !== character.toLowerCase();
}

/** True when a small letter stands at `at`. */
export function isSmallAt(text: string, at: number): boolean {
  const character = text.slice(at, at + lengthAt(text, at));
  return character !== character.toUpperCase();
}

/** True when a digit (or another sign for a number) stands between `start` and `end`. */
export function holdsDigit(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at += lengthAt(text, at)) {
    if (kindAt(text, at) === 'digit') return true;
  }
  return false;
}

/** True for the straight and the curly apostrophe. */
export function isApostrophe(unit: string | undefined): boolean {
  return unit === "'" || unit === '\u2019';
}

/** A text without soft hyphens and joiners, which the child does not see. */
export function withoutInvisible(text: string): string {
  return text.replace(/[\u00AD\u200B-\u200D\u2060\uFEFF]/g, '');
}

/** `joined` is what continues a word and is seen on its letters or not at all: accents, soft hyphens, joiners. */
type Kind = 'letter' | 'digit' | 'joined' | 'other';

function kindAt(text: string, at: number): Kind {
  const unit = text.charCodeAt(at);
  if (unit < 0x80) {
    if ((unit >= 97 && unit <= 122) || (unit >= 65 && unit <= 90)) return 'letter';
    return unit >= 48 && unit <= 57 ? 'digit' : 'other';
  }
  if (unit === 0xad || unit === 0xfeff || unit === 0x2060 || (unit >= 0x200b && unit <= 0x200d))
    return 'joined';
  // General Punctuation, quotation marks and dashes among it, holds neither letters nor accents.
  if (Number.isNaN(unit) || (unit >= 0x2000 && unit <= 0x206f)) return 'other';
  const character = text.slice(at, at + lengthAt(text, at));
  if (/^\p{L}$/u.test(character)) return 'letter';
  if (/^\p{M}$/u.test(character)) return 'joined';
  return /^\p{N}$/u.test(character) ? 'digit' : 'other';
}

/** The units of the character at `at`: two for a pair of surrogates. */
function lengthAt(text: string, at: number): number {
  return (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
}
