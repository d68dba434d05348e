import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

/** The words of a text; a number in <>, an abbreviation in [], and the written form behind = where it differs. */
function words(text: string): string {
  return readStory(text)
    .pages.flatMap(({ page }) =>
      page.sentences.flatMap((sentence) => sentence.words.map((word) => ({ word, page }))),
    )
    .map(({ word, page }) => {
      const written = page.source.slice(word.span.start, word.span.end);
      const shown = { word: word.text, number: `<${word.text}>`, abbreviation: `[${word.text}]` }[word.form];
      return written === word.text ? shown : `${shown}=${written}`;
    })
    .join(' ');
}

test.each([
  ['plain words', 'Kim has a red net.', 'Kim has a red net'],
  ['nothing', '', ''],
  ['marks alone', '… ! — “ ”', ''],
  ['apostrophes inside', "Don't take Kim’s net", "Don't take Kim’s net"],
  ['an apostrophe before a clipped word', '’Til then, get ’em. ‘tis', '’Til then get ’em ‘tis'],
  ['a straight one before a clipped word', "'twas fun", "'twas fun"],
  ['a straight quotation mark is no apostrophe', "'Stop!' said Kim.", 'Stop said Kim'],
  ['an apostrophe behind a word is not part of it', 'the dogs’ beds', 'the dogs beds'],
  ['several apostrophes', "rock'n'roll o’clock", "rock'n'roll o’clock"],
  ['a hyphen gives two words', 'a well-known tree-house', 'a well known tree house'],
  ['dashes part words', 'Kim—Pip – Ann - Bob--Tod', 'Kim Pip Ann Bob Tod'],
  ['digits', '7 fish, 3.5, 1,000 and 7:30', '<7> fish <3.5> <1,000> and <7:30>'],
  ['digits with letters', 'the 3rd and B2', 'the <3rd> and <B2>'],
  ['a year at the end', 'It was 1999.', 'It was <1999>'],
  ['abbreviations', 'Mr. Hill and Dr. Bell', '[Mr.] Hill and [Dr.] Bell'],
  ['an abbreviation without its stop', 'Mr Hill', 'Mr Hill'],
  ['dotted abbreviations', 'at 7 a.m. in the U.S. we', 'at <7> [a.m.] in the [U.S.] we'],
  ['an initial', 'J. Hill', '[J.] Hill'],
  ['I is no initial', 'It is I. Kim ran.', 'It is I Kim ran'],
  ['ellipses', 'Wait… and... go', 'Wait and go'],
  ['emphasis', '*Kim* **ran** ***up***', 'Kim ran up'],
  ['emphasis inside a word', '*j*ump so **b**ig', 'jump=j*ump so big=b**ig'],
  [
    'links: their words but not their address',
    '[the pond](pond.md "a title") and <https://a.example>',
    'the pond and https a example',
  ],
  ['escapes', 'a\\*b 1\\. \\"Kim\\"', 'a b <1> Kim'],
  ['an escape inside a word leaves its place right', 'Kim\\_ ran', 'Kim ran'],
  ['named references', 'caf&eacute; &amp; tea', 'café=caf&eacute; tea'],
  ['numbered references', '&#75;im &#x1F600; r&#97;n', 'Kim=&#75;im ran=r&#97;n'],
  ['an unknown reference is text', '&nosuch; Kim', 'nosuch Kim'],
  ['a reference that gives a reference', '&amp;amp; Kim', 'amp Kim'],
  ['accents', 'é café naïve Zoë', 'é café naïve Zoë'],
  ['combining accents', 'cafe\u0301 e\u0301te\u0301', 'cafe\u0301 e\u0301te\u0301'],
  ['emoji', 'Kim 😀 ran 👩‍👧 up', 'Kim ran up'],
  ['lone surrogates', 'Kim \uD83D ran \uDE00up', 'Kim ran up'],
  ['NUL', 'Kim\u0000 ran', 'Kim ran'],
  ['a soft hyphen is not seen', 'jum\u00ADping', 'jumping=jum\u00ADping'],
  ['line ends', 'Kim ran\r\nto\rthe\npond', 'Kim ran to the pond'],
  ['indented lines', 'Kim\n   ran  \n\tup', 'Kim ran up'],
  ['a byte-order mark', '\uFEFFKim ran', 'Kim ran'],
  ['a byte-order mark inside', '---\n\uFEFFKim ran', 'Kim ran'],
  ['lists', '- Kim ran\n- Pip sat\n\n1. Ann hid', 'Kim ran Pip sat Ann hid'],
  ['a list item over two lines', '- Kim\n  ran', 'Kim ran'],
  ['code is not read', 'Kim `ran` up\n\n    four spaces\n\n```\nfence\n```', 'Kim up'],
  [
    'HTML is not read',
    '<div>\nno\n</div>\n\nK<b>i</b>m <!-- no --> ran\n\n<!-- no\n\nno -->',
    'Kim=K<b>i</b>m ran',
  ],
  ['pictures are not read', 'Kim ![a note](a.png) ran', 'Kim ran'],
  ['quotes are for the teacher', '> Ask why.\n\nKim ran.', 'Kim ran'],
  ['definitions are not read', '[net]: art/net.png "title"\n\nKim', 'Kim'],
  ['a link defined on another page', 'See [the net][net].\n\n---\n\n[net]: art/net.png', 'See the net'],
])('%s', (_, text, expected) => {
  expect(words(text)).toBe(expected);
});

test('the first word of a sentence and of speech is known', () => {
  const story = readStory('Then Kim said, “Go up!” Pip ran.');
  const opening = story.pages.flatMap(({ page }) => page.sentences.flatMap((sentence) => sentence.words));
  expect(opening.filter((word) => word.opensSentence).map((word) => word.text)).toEqual([
    'Then',
    'Go',
    'Pip',
  ]);
});
