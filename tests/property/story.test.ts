import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readStory } from '../../server/src/story/read-story.ts';
import type { Story } from '../../server/src/story/story.ts';
import type { Span } from '../../server/src/text/span.ts';

const head = '---\nlesson: 3\nnames: [Kim]\nstory words:\n  pond: a lake\n---\n';
const pieces = [
  '---',
  '***',
  '\n---\n',
  '\n\n',
  '\n',
  '\r\n',
  '\r',
  ' ',
  '  \n',
  '\t',
  '# ',
  '> ',
  '- ',
  '1. ',
  '```',
  '<!--',
  '-->',
  '<b>',
  '*',
  '**',
  '_',
  '`',
  '[',
  ']',
  '(a)',
  '[a]: b',
  '![',
  '\\',
  '&amp;',
  '&eacute;',
  '&#0;',
  '&#x1F600;',
  '"',
  '“',
  '”',
  '’',
  "'",
  '.',
  '…',
  '!',
  ',',
  '—',
  '-',
  'Kim',
  'ran',
  'Mr.',
  'I',
  'said',
  '7',
  'é',
  'e\u0301',
  '😀',
  '\uD83D',
  '\uDE00',
  '\uFEFF',
  '\u0000',
  '\u00AD',
  'lesson:',
  'lesson: 4',
  'names: [Kim',
  'title: "',
  ': ',
  '*a',
  '&a',
  '!x ',
  '{',
  '|',
  '===',
  '    ',
];
const bits = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...pieces) },
  fc.string({ unit: 'binary', maxLength: 4 }),
);
const drafts = fc
  .tuple(
    fc.constantFrom('', head, '---\n', '\uFEFF---\r\n', '---\nlesson: 1\n'),
    fc.array(bits, { maxLength: 40 }),
  )
  .map(([start, rest]) => start + rest.join(''));

/** Compares as plain data, which is many times quicker than a deep comparison; the latter shows the difference. */
function sameStory(found: Story, expected: Story): void {
  if (JSON.stringify(found) !== JSON.stringify(expected)) expect(found).toEqual(expected);
}

function spansOf(story: Story): readonly Span[] {
  const { frontMatter, title } = story;
  const inFile = [
    frontMatter.span,
    ...[frontMatter.title, frontMatter.lesson, frontMatter.sequence].flatMap((value) =>
      value ? [value.span] : [],
    ),
    ...[...frontMatter.names, ...frontMatter.storyWords, ...frontMatter.problems].map(({ span }) => span),
    ...frontMatter.pronunciations.flatMap(({ word, graphemes }) => [word.span, graphemes.span]),
    ...(title ? [title.span, ...title.words.map((word) => word.span)] : []),
  ];
  const onPages = story.pages.flatMap(({ page, start }) =>
    [
      ...page.sentences.flatMap((sentence) => [sentence, ...sentence.words]),
      ...page.marks,
      ...page.illustrations,
      ...page.notes,
      ...page.problems,
      ...(page.heading ? [page.heading, ...page.heading.words] : []),
    ].map(({ span }) => {
      if (span.end > page.source.length) throw new Error(`${JSON.stringify(span)} is not on its page`);
      return { start: span.start + start, end: span.end + start };
    }),
  );
  return [...inFile, ...onPages];
}

test('any text gives a story, and every place lies in the text', () => {
  fc.assert(
    fc.property(drafts, (text) => {
      for (const { start, end } of spansOf(readStory(text))) {
        expect(start >= 0 && start <= end && end <= text.length, `${start}-${end}`).toBe(true);
      }
    }),
    { numRuns: 800 },
  );
});

test('words stand in order, do not overlap, and lie in their sentences', () => {
  fc.assert(
    fc.property(drafts, (text) => {
      for (const { page } of readStory(text).pages) {
        let last = 0;
        for (const sentence of page.sentences) {
          expect(sentence.words.length).toBeGreaterThan(0);
          for (const { span } of sentence.words) {
            expect(span.start).toBeGreaterThanOrEqual(Math.max(last, sentence.span.start));
            expect(span.end).toBeLessThanOrEqual(sentence.span.end);
            expect(span.end).toBeGreaterThan(span.start);
            last = span.end;
          }
        }
      }
    }),
    { numRuns: 400 },
  );
});

test('the same text gives the same story', () => {
  fc.assert(
    fc.property(drafts, (text) => {
      sameStory(readStory(text), readStory(text));
    }),
    { numRuns: 200 },
  );
});

test('in plain text the place of every word holds the word', () => {
  const plain = fc
    .array(
      fc.constantFrom(
        'Kim',
        'ran',
        'don’t',
        'Mr.',
        '7b',
        'é',
        '😀',
        ' ',
        ', ',
        '. ',
        '! ',
        '\n',
        '\r\n',
        '\n\n',
        ' “',
        '” ',
      ),
      {
        maxLength: 60,
      },
    )
    .map((all) => all.join(''));
  fc.assert(
    fc.property(plain, (text) => {
      const story = readStory(text);
      let words = 0;
      for (const { page } of story.pages) {
        for (const word of page.sentences.flatMap((sentence) => sentence.words)) {
          expect(page.source.slice(word.span.start, word.span.end)).toBe(word.text);
          words++;
        }
      }
      // Every run of letters and digits is some word, so none is lost.
      expect(words).toBeGreaterThanOrEqual(
        text.split(/[^\p{L}\p{N}’.]+/u).filter((run) => /[\p{L}\p{N}]/u.test(run)).length,
      );
    }),
    { numRuns: 400 },
  );
});

test('after any edits, reading on from the last version equals reading from scratch', () => {
  const edit = fc.record({
    at: fc.nat(),
    remove: fc.oneof(fc.constant(0), fc.nat({ max: 12 })),
    insert: fc.oneof(bits, fc.constant('')),
  });
  const start = `${head}# The Net\n\nKim ran.\n\n---\n\n“Go!” said Kim.\n\n---\n\n[Pip][a] sat.\n\n---\n\n## Later\n\nPip sat.\n\n[a]: b\n`;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 15 }), (script) => {
      let text = start;
      let story = readStory(text);
      for (const { at, remove, insert } of script) {
        const place = at % (text.length + 1);
        text = text.slice(0, place) + insert + text.slice(place + remove);
        story = readStory(text, story);
        sameStory(story, readStory(text));
      }
    }),
    { numRuns: 80 },
  );
});

test('reading on from any other story equals reading from scratch', () => {
  fc.assert(
    fc.property(drafts, drafts, (text, other) => {
      sameStory(readStory(text, readStory(other)), readStory(text));
    }),
    { numRuns: 300 },
  );
});

test('line ends of either kind give the same words', () => {
  const wordsOf = (text: string) =>
    readStory(text).pages.map(({ page }) =>
      page.sentences.map((sentence) => [sentence.text, ...sentence.words.map((word) => word.text)]),
    );
  fc.assert(
    fc.property(drafts, (draft) => {
      const text = draft.replace(/\r\n?/g, '\n');
      expect(wordsOf(text.replaceAll('\n', '\r\n'))).toEqual(wordsOf(text));
      expect(wordsOf(text.replaceAll('\n', '\r'))).toEqual(wordsOf(text));
    }),
    { numRuns: 400 },
  );
});
