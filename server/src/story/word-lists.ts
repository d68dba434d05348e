/** Titles before a name; their stop never ends a sentence inside a paragraph. */
export const titles: ReadonlySet<string> = new Set([
  'Mr',
  'Mrs',
  'Ms',
  'Mx',
  'Dr',
  'Prof',
  'Capt',
  'Sgt',
  'Rev',
  'Mt',
]);

/** Words that are written with a stop of their own. */
export const abbreviations: ReadonlySet<string> = new Set([
  ...titles,
  'St',
  'Ave',
  'Rd',
  'Jr',
  'Sr',
  'etc',
  'vs',
]);

/** Words that lost their head: 'til, 'em. */
export const elisions: ReadonlySet<string> = new Set([
  'bout',
  'cause',
  'em',
  'neath',
  'n',
  'round',
  'til',
  'till',
  'tis',
  'twas',
  'tween',
  'twill',
]);

/** Words that say how something was said, as in “Go!” Kim said. */
export const speechVerbs: ReadonlySet<string> = new Set([
  'added',
  'asked',
  'asks',
  'began',
  'begged',
  'called',
  'calls',
  'cried',
  'cries',
  'croaked',
  'growled',
  'hissed',
  'huffed',
  'replied',
  'roared',
  'said',
  'sang',
  'says',
  'shouted',
  'shouts',
  'sighed',
  'sings',
  'snapped',
  'squeaked',
  'squealed',
  'told',
  'whispered',
  'whispers',
  'yelled',
  'yells',
  'yelped',
]);

/** Words that open a sentence of their own when they have a capital, even before a word such as said. */
export const sentenceOpeners: ReadonlySet<string> = new Set([
  'A',
  'All',
  'An',
  'But',
  'He',
  'It',
  'No',
  'She',
  'So',
  'That',
  'The',
  'Then',
  'They',
  'This',
  'We',
  'Who',
  'You',
]);

/** Words that need another behind them, so that no line of verse ends a sentence with one. */
export const unfinished: ReadonlySet<string> = new Set([
  'a',
  'an',
  'and',
  'at',
  'but',
  'for',
  'from',
  'its',
  'my',
  'nor',
  'of',
  'or',
  'our',
  'the',
  'their',
  'to',
  'with',
  'your',
]);
