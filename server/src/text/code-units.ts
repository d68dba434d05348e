/** UTF-16 code units that the readers of plain YAML and plain markdown look for. */
export const codeUnits = {
  lineFeed: 10,
  carriageReturn: 13,
  space: 32,
  exclamationMark: 33,
  doubleQuote: 34,
  numberSign: 35,
  ampersand: 38,
  singleQuote: 39,
  comma: 44,
  hyphen: 45,
  colon: 58,
  greaterThan: 62,
  openBracket: 91,
  closeBracket: 93,
  openBrace: 123,
  closeBrace: 125,
} as const;
