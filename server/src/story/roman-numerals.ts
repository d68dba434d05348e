import type { Token } from './tokens.ts';

/**
 * Tokens whose Roman numerals are numbers: behind *Chapter*, *Part*, *Book* or *Volume*, and as the whole of a heading.
 * Elsewhere *I* is a word, and a lone I behind such a word is a numeral in a heading only (*the part I did*).
 */
export function withRomanNumerals(
  tokens: readonly Token[],
  { isHeading }: { readonly isHeading: boolean },
): readonly Token[] {
  if (!tokens.some((token) => token.kind === 'word' && isRoman(token.text))) return tokens;
  const isAlone = isHeading && tokens.filter(({ kind }) => kind === 'word').length === 1;
  return tokens.map((token, index): Token => {
    if (token.kind !== 'word' || token.form !== 'word' || !isRoman(token.text)) return token;
    const before = tokens[index - 1];
    const isCounted =
      before?.kind === 'word' && divisions.test(before.text) && (isHeading || token.text !== 'I');
    return isAlone || isCounted ? { ...token, form: 'number' } : token;
  });
}

const divisions = /^(?:Chapter|Part|Book|Volume|CHAPTER|PART|BOOK|VOLUME)$/;

/** From I to XXXIX; no first reader has more chapters. */
function isRoman(text: string): boolean {
  return /^(?=[IVX])X{0,3}(?:IX|IV|V?I{0,3})$/.test(text);
}
