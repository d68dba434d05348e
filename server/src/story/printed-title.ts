import { withRomanNumerals } from './roman-numerals.ts';
import type { FrontMatter, Heading, Word } from './story.ts';
import { tokensOf } from './tokens.ts';

/**
 * The title of the front matter as the heading that the child sees on the title page, where the text has none; spans absolute.
 * Without words where the title is written with escapes, so that nothing can be said of a place in it.
 */
export function printedTitle(text: string, { title }: FrontMatter): Heading | undefined {
  if (title === undefined) return undefined;
  const { value, span } = title;
  const start = text.startsWith(value, span.start)
    ? span.start
    : text.startsWith(value, span.start + 1)
      ? span.start + 1
      : undefined;
  if (start === undefined) return { text: value, words: [], span };
  const words: Word[] = [];
  for (const token of withRomanNumerals(tokensOf(value), { isHeading: true })) {
    if (token.kind !== 'word') continue;
    const place = { start: start + token.start, end: start + token.end };
    words.push({ text: token.text, span: place, form: token.form, opensSentence: words.length === 0 });
  }
  return { text: value, words, span };
}
