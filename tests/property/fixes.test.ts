import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { declareName, declareStoryWord } from '../../server/src/fixes/declare.ts';
import { teachWord } from '../../server/src/fixes/teach.ts';
import { edited } from '../../server/src/fixes/text-edit.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import type { Lesson } from '../../server/src/sequence/sequence.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import type { Problem } from '../../server/src/text/problem.ts';
import { partsOfSpeech } from '../../server/src/words/thesaurus-format.ts';
import { wordsInForm } from '../../server/src/words/word-forms.ts';
import { offersFor, packageThesaurus, put, sampleTaught, splitsAt } from '../support/fixes.ts';
import { packagePhonics } from '../support/package-phonics.ts';

const bases = fc.constantFrom(
  ...'rabbit house child foot knife party horse tooth mouse jump run carry think throw begin swim tie hop bake large happy pretty thin brave old enormous quick slow wolf box city leaf ride sing see lie catch teach friend apple egg island hour elephant animal dog fox bus'.split(
    ' ',
  ),
);
const lessons = fc.constantFrom('3', '8', '12', '16', '17', '20', '25', '28', '32', '36');
const frames = fc.constantFrom(
  'Kim had a [].',
  'An [] sat.',
  'They [] up the hill.',
  'He has [] it.',
  'The [] man ran.',
  '"[] it!" said Kim.',
  'She is [].',
  'It is [] than a cat.',
  'She saw the [] and ran.',
  'The cat, a [], sat.',
  'To [] is fun.',
);

describe('whatever is offered for a word', () => {
  test('can be read where it stands, is no guess, is fit for six-year-olds, and needs no other article', () => {
    fc.assert(
      fc.property(bases, lessons, frames, fc.nat(20), (base, lesson, frame, choice) => {
        const forms = partsOfSpeech.flatMap((part) =>
          (['base', 'plural', 's', 'past', 'participle', 'ing', 'er', 'est'] as const).flatMap((form) =>
            wordsInForm(base, part, form, packageThesaurus, packagePhonics),
          ),
        );
        const word = forms[choice % forms.length] ?? base;
        const shown = frame.startsWith('"[') ? word.charAt(0).toUpperCase() + word.slice(1) : word;
        const marked = frame.replace('[]', `[${shown}]`);
        for (const offer of offersFor(marked, lesson)) {
          const after = put(marked, offer);
          const story = readStory(`---\nlesson: "${lesson}"\nnames: [Kim, Tam, Nod]\n---\n${after}\n`);
          const review = reviewStory({ story, taught: sampleTaught(lesson), phonics: packagePhonics });
          const words = review.pages[0]?.reviewed.words ?? [];
          const parts = offer.text.split(' ');
          const from = words.findIndex((_, at) =>
            parts.every((part, index) => words[at + index]?.word.text === part),
          );
          expect(from, after).not.toBe(-1);
          for (const { kind, reading, word: placed } of words.slice(from, from + parts.length)) {
            expect(['decodable', 'high-frequency'], after).toContain(kind);
            expect(kind === 'decodable' && reading?.source === 'rule', after).toBe(false);
            expect(packagePhonics.words.unfitFor(placed.text), after).toBeUndefined();
          }
          const article = words[from - 1];
          if (article !== undefined && /^an?$/i.test(article.word.text)) {
            const startsWithVowel = /^[aeiou]/i.test(offer.text);
            if (!/^(h|u|one)/i.test(offer.text)) {
              expect(article.word.text.toLowerCase(), after).toBe(startsWithVowel ? 'an' : 'a');
            }
          }
          expect(/^\p{Lu}/u.test(offer.text), after).toBe(/^\p{Lu}/u.test(shown));
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('whatever sentence is split', () => {
  const subjects = fc.constantFrom(
    'Kim',
    'He',
    'I',
    'They',
    'The red hen',
    'A fox',
    'Kim and Tam',
    'My cat',
    'It',
  );
  const verbs = fc.constantFrom(
    'ran up the hill',
    'sat',
    'saw a bug',
    'jumped',
    'was hot',
    'had a hat',
    'put on a hat',
    'ate and ate',
    'can swim',
    'sits on a rock',
  );
  const joints = fc.constantFrom(
    ' and ',
    ', and ',
    ' but ',
    ', so ',
    ' and then ',
    ', ',
    ' when ',
    ' who ',
    ' then ',
  );
  const seconds = fc.constantFrom('', 'she ', 'the cat ', 'Tam ', 'it ', 'they ');
  test('the two are sentences with all words of the one, in their order', () => {
    let split = 0;
    fc.assert(
      fc.property(subjects, verbs, joints, seconds, verbs, (subject, first, joint, second, last) => {
        const before = `${subject} ${first}${joint}${second}${last}.`;
        for (const after of splitsAt(before)) {
          split++;
          const sentences = readStory(`---\nlesson: "1"\n---\n${after}\n`).pages[0]?.page.sentences ?? [];
          expect(sentences, after).toHaveLength(2);
          for (const { text, words } of sentences) {
            expect(text, after).toMatch(/^\p{Lu}.*\.$/u);
            expect(words.length, after).toBeLessThan(before.split(' ').length);
          }
          const left = sentences[0]?.words.map(({ text }) => text) ?? [];
          expect(before.replace(/,/g, '').startsWith(left.join(' ')), after).toBe(true);
          expect(left.at(-1), after).not.toMatch(/^(and|but|so|then|when|the|a)$/);
          const tail = before.split(' ').at(-1) ?? '';
          expect(after.endsWith(tail), after).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
    expect(split).toBeGreaterThan(50);
  });
});

describe('whatever is written into a file', () => {
  const note = fc.constantFrom('', ' # a note', ' # [x], "y": z');
  const gap = fc.constantFrom('', '\n', '\n    # between\n', '  # outer\n');
  const list = fc.constantFrom(
    undefined,
    () => ' [the, I]',
    () => ' [ the ]',
    () => ' []',
    () => ' [the, I,]',
    (indent: string) => `\n${indent}  - the # first\n${indent}  - I`,
    (indent: string) => ` [\n${indent}    the, # one\n${indent}    I\n${indent}  ]`,
    () => '',
  );
  const lesson = fc.record({
    list,
    before: note,
    after: note,
    gap,
    title: fc.boolean(),
    last: fc.boolean(),
    key: note,
  });

  test('the sequence keeps every sign it had, and only the lesson has one word more', () => {
    fc.assert(
      fc.property(
        fc.array(lesson, { minLength: 1, maxLength: 5 }),
        fc.nat(4),
        fc.constantFrom('    ', '  '),
        fc.constantFrom('\n', '\r\n'),
        fc.boolean(),
        (given, chosen, indent, lineEnd, endsOpen) => {
          const written = given.map(({ list: words, before, after, gap: space, title, last }, index) => {
            const dash = `${indent.slice(2)}- `;
            const lines = [`${dash}name: "${index}"${before}`];
            if (title) lines.push(`${indent}title: t${index}`);
            if (words !== undefined) lines.push(`${indent}high-frequency words:${words(indent)}${after}`);
            if (last) lines.push(`${indent}targets: { page: 9 }${before}`);
            return `${lines.join('\n')}\n${space}`;
          });
          const whole = `# head\ntitle: x\nlessons:\n${written.join('')}`.replaceAll('\n', lineEnd);
          const text = endsOpen ? whole.trimEnd() : whole;
          const before = readSequence(text);
          const taught = before.lessons[chosen % before.lessons.length];
          if (taught === undefined) return;
          const edit = teachWord(text, taught, 'zig');
          expect(edit, text).toBeDefined();
          if (edit === undefined) return;
          const after = edited(text, [edit]);
          const kept = text.slice(edit.span.start, edit.span.end);
          expect(edit.text.includes(kept), after).toBe(true);
          const read = readSequence(after);
          expect(read.problems.length, after).toBe(before.problems.length);
          expect(read.lessons.map(wordsOf), after).toEqual(
            before.lessons.map((each) => (each === taught ? [...wordsOf(each), 'zig'] : wordsOf(each))),
          );
          expect(read.lessons.map(({ title, targets }) => [title, targets])).toEqual(
            before.lessons.map(({ title, targets }) => [title, targets]),
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  test('any text: a declared word is declared, and nothing else is changed', () => {
    const lines = fc.constantFrom(
      'title: A',
      'lesson: "1"',
      'names: [Kim]',
      'names:',
      '  - Tam',
      'story words:',
      '  pond: a lake',
      '# note',
      '',
      'story words: {a: b}',
      'oops',
      'names: Kim # x',
      '  hill: "a: b" # c',
      'pronunciations:',
      '  zib: z-i-b',
    );
    fc.assert(
      fc.property(fc.array(lines, { maxLength: 9 }), fc.boolean(), (head, isName) => {
        const text = `---\n${head.join('\n')}\n---\nKim sat.\n`;
        const story = readStory(text);
        const edit = isName ? declareName(story, 'Zed') : declareStoryWord(story, 'zed');
        if (edit === undefined) return;
        const after = edited(text, [edit]);
        const read = readStory(after).frontMatter;
        const before = story.frontMatter;
        expect(edit.text.includes(text.slice(edit.span.start, edit.span.end)), after).toBe(true);
        const names = read.names.map(({ value }) => value);
        const words = read.storyWords.map(({ word }) => word);
        const namesBefore = before.names.map(({ value }) => value);
        const wordsBefore = before.storyWords.map(({ word }) => word);
        expect(names, after).toEqual(isName ? [...namesBefore, 'Zed'] : namesBefore);
        expect(words, after).toEqual(isName ? wordsBefore : [...wordsBefore, 'zed']);
        // A declared word has no meaning yet, and is marked until it has one.
        const errors = (problems: readonly Problem[]) =>
          problems.filter(({ severity }) => severity === 'error').length;
        expect(errors(read.problems), after).toBeLessThanOrEqual(errors(before.problems));
      }),
      { numRuns: 1000 },
    );
  });
});

function wordsOf({ highFrequencyWords }: Lesson): readonly string[] {
  return highFrequencyWords.map(({ value }) => value);
}
