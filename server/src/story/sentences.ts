import { isApostrophe, isCapitalAt, isSmallAt } from './letters.ts';
import { lineEnds } from './line-ends.ts';
import type { Token } from './tokens.ts';
import { sentenceOpeners, speechVerbs, titles, unfinished } from './word-lists.ts';

/**
 * Cuts a paragraph's tokens into sentences, each a run of tokens with at least one word. A sentence ends
 * - at `.` `!` `?` `…` with the closing quotes and brackets behind them, unless the sentence goes on: with a small
 *   letter behind speech (“Stop!” said Kim.) or behind `!`, `?`, `…` (Splash! went the frog.), or with who said it
 *   (“Stop!” Kim said.); the stop of Mr. never ends one, nor does that of a number at the head of a line (1. Kim ran);
 * - at the end of a line without a mark when the next begins with a capital, as in verse; not when that word is I, when
 *   the line ends in a word that needs another (the, and), or when the line is so long that it was only wrapped there.
 */
export function sentencesOf(tokens: readonly Token[], visible: string): readonly (readonly Token[])[] {
  const sentences: Token[][] = [];
  let sentence: Token[] = [];
  let hasWord = false;
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index];
    if (token === undefined) break;
    let ends = false;
    if (token.kind === 'line-end') {
      ends = endsAtLine(tokens, index, visible);
    } else {
      sentence.push(token);
      if (token.kind === 'word') hasWord = true;
      const next = afterClosers(tokens, index + 1, isTerminator(token));
      if (isTerminator(token)) {
        for (const closer of tokens.slice(index + 1, next)) sentence.push(closer);
        ends = endsAtTerminator(tokens, index, next);
        index = next - 1;
      } else if (token.kind === 'word' && token.form === 'abbreviation') {
        ends = endsAtAbbreviation(tokens, index, next);
        if (ends) {
          for (const closer of tokens.slice(index + 1, next)) sentence.push(closer);
          index = next - 1;
        }
      }
    }
    if (ends && hasWord) {
      sentences.push(sentence);
      sentence = [];
      hasWord = false;
    }
  }
  if (hasWord) sentences.push(sentence);
  return sentences;
}

/** The longest line, in UTF-16 units, that is taken for a whole line of verse; longer ones were wrapped. */
const longestVerse = 60;

/** How many marks and line ends in a row are looked past for a word; beyond lies no writing but a row of marks. */
const mostMarks = 20;

function isTerminator(token: Token | undefined): boolean {
  return (
    token?.kind === 'mark' &&
    (token.mark === '.' || token.mark === '!' || token.mark === '?' || token.mark === '…')
  );
}

/** Past the closing quotes and brackets (and, behind a terminator, further terminators) that touch the token before. */
function afterClosers(tokens: readonly Token[], from: number, terminators: boolean): number {
  let next = from;
  for (let token = tokens[next]; token?.kind === 'mark'; token = tokens[next]) {
    const touches = token.start === tokens[next - 1]?.end;
    if (!touches || !(token.side === 'closes' || (terminators && isTerminator(token)))) break;
    next++;
  }
  return next;
}

function endsAtTerminator(tokens: readonly Token[], at: number, next: number): boolean {
  const run = tokens.slice(at, next);
  const onlyStop = run.length === 1 && isMarkNamed(run[0], '.');
  const onlyEllipsis = run.every((token) => isMarkNamed(token, '…'));
  const closesSpeech = run.some((token) => isMarkNamed(token, '"') || isMarkNamed(token, "'"));
  const following = nextWord(tokens, next);
  if (following === undefined) return true;
  if (onlyStop && isListNumber(tokens, at - 1)) return false;
  if (following.opensSpeech) return true;
  const { word } = following;
  if (startsSmall(word.text)) return !closesSpeech && run.some((token) => isMarkNamed(token, '.'));
  if (onlyEllipsis && (word.form === 'number' || isFirstPerson(word.text))) return false;
  return !(closesSpeech && saysWho(tokens, following.index));
}

function endsAtAbbreviation(tokens: readonly Token[], at: number, next: number): boolean {
  const token = tokens[at];
  if (token?.kind !== 'word' || titles.has(token.text.slice(0, -1)) || token.text.length === 2) return false;
  const following = nextWord(tokens, next);
  if (following === undefined || startsSmall(following.word.text) || following.word.form === 'number')
    return false;
  if (token.text !== 'St.') return true;
  // Pond St. is a street and may end a sentence; the St. of St. Ann stands before its name.
  const before = tokens[at - 1];
  return before?.kind === 'word' && startsWithCapital(before.text);
}

function endsAtLine(tokens: readonly Token[], at: number, visible: string): boolean {
  let last = at - 1;
  while (last > at - mostMarks && isClosing(tokens[last])) last--;
  const before = tokens[last];
  if (
    before?.kind !== 'word' ||
    before.form === 'abbreviation' ||
    unfinished.has(before.text.toLowerCase())
  ) {
    return false;
  }
  let next = at + 1;
  while (next < at + mostMarks && (isOpening(tokens[next]) || tokens[next]?.kind === 'line-end')) next++;
  const word = tokens[next];
  if (word?.kind !== 'word' || !startsWithCapital(word.text) || isFirstPerson(word.text)) return false;
  const lineEnd = tokens[at]?.start ?? 0;
  const lineStart = Math.max(...lineEnds.map((sign) => visible.lastIndexOf(sign, lineEnd - 1))) + 1;
  return lineEnd - lineStart + word.text.length <= longestVerse;
}

/** A number that is the first thing of its line or of the text: `1. Kim ran`. */
function isListNumber(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  const before = tokens[at - 1];
  return (
    token?.kind === 'word' && token.form === 'number' && (before === undefined || before.kind === 'line-end')
  );
}

type WordToken = Extract<Token, { kind: 'word' }>;

/** The next word, its place among the tokens, and whether a quotation is opened before it. */
function nextWord(
  tokens: readonly Token[],
  from: number,
): { readonly word: WordToken; readonly index: number; readonly opensSpeech: boolean } | undefined {
  let opensSpeech = false;
  for (let index = from; index < from + mostMarks; index++) {
    const token = tokens[index];
    if (token?.kind === 'word') return { word: token, index, opensSpeech };
    if (isOpening(token) && (isMarkNamed(token, '"') || isMarkNamed(token, "'"))) opensSpeech = true;
  }
  return undefined;
}

/** True for a name, or several, before a word of saying: Kim said, Mom and Dad said, Mr. Hill said. */
function saysWho(tokens: readonly Token[], from: number): boolean {
  for (let index = from; index < from + 4; index++) {
    const token = tokens[index];
    if (token?.kind !== 'word') return false;
    if (index > from && speechVerbs.has(token.text)) return true;
    const joins = index > from && token.text === 'and';
    if (!joins && (!startsWithCapital(token.text) || (index === from && sentenceOpeners.has(token.text))))
      return false;
  }
  return false;
}

function isOpening(token: Token | undefined): boolean {
  return token?.kind === 'mark' && token.side === 'opens';
}

function isClosing(token: Token | undefined): boolean {
  return token?.kind === 'mark' && token.side === 'closes';
}

function isMarkNamed(token: Token | undefined, mark: string): boolean {
  return token?.kind === 'mark' && token.mark === mark;
}

function isFirstPerson(word: string): boolean {
  return /^I(?:['’](?:m|ll|ve|d))?$/.test(word);
}

function startsWithCapital(word: string): boolean {
  return isCapitalAt(word, isApostrophe(word[0]) ? 1 : 0);
}

function startsSmall(word: string): boolean {
  return isSmallAt(word, isApostrophe(word[0]) ? 1 : 0);
}
