import { describe, expect, it } from 'vitest';
import type { FileRead } from '../../server/src/command-line/host.ts';
import { type Outcome, terminal } from '../support/memory-host.ts';
import { pondPhonics, pondSequence } from '../support/pond-phonics.ts';

type Files = Readonly<Record<string, string | FileRead>>;

const passing = '---\ntitle: The Net\nlesson: "2"\n---\nThe net sat.\n';
const short = '---\nlesson: "2"\n---\nThe night net.\nThe night sat.\n';

/** Calls `check` over files of the working folder, the pond's sequence among them. */
function check(files: Files, ...given: readonly string[]): Outcome {
  return terminal({ 'sequence.yaml': pondSequence, ...files }, pondPhonics)('check', ...given);
}

describe('check for people', () => {
  it('shows a passing story in one line', () => {
    expect(check({ 'net.md': passing }, 'net.md')).toEqual({
      exitCode: 0,
      output: `net.md  The Net, lesson 2: 100.0 % of 3 words readable, target 75 %: passes

1 story checked by sequence.yaml: it passes.
`,
      errors: '',
    });
  });

  it('shows every finding of a story that falls short at its place', () => {
    expect(check({ 'night.md': short }, 'night.md')).toEqual({
      exitCode: 1,
      output: `night.md  lesson 2: 66.6 % of 6 words readable, target 75 %: falls short
night.md:2:9  66.6 % of the words are readable; the target is at least 75 %. Of the 6 words, 1 more word would have to be readable.  [under-target]
night.md:4:5  “night” needs igh as in light, which lesson 3 teaches.  [untaught-spelling]
night.md:5:5  “night” needs igh as in light, which lesson 3 teaches.  [untaught-spelling]

1 story checked by sequence.yaml: it falls short.
`,
      errors: '',
    });
  });

  it('sets nothing off by colour unless the terminal has it', () => {
    const files = { 'sequence.yaml': pondSequence, 'night.md': short };
    const plain = terminal(files, pondPhonics)('check', '.').output;
    const coloured = terminal(files, pondPhonics, { hasColour: true })('check', '.').output;
    expect(plain).not.toContain('\u001b');
    expect(coloured).toContain('\u001b[31mfalls short\u001b[39m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences begin with one.
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(plain);
  });
});

describe('files of a call', () => {
  it('counts a story once that a file and its folder lead to', () => {
    const outcome = check({ 'book/net.md': passing }, 'book/net.md', 'book');
    expect(outcome).toMatchObject({ exitCode: 0, errors: '' });
    expect(outcome.output).toContain('1 story checked by sequence.yaml: it passes.\n');
  });

  it.each([
    [1, '1 markdown file names no lesson and was left alone.'],
    [2, '2 markdown files name no lesson and were left alone.'],
  ])('says that %d other markdown files were left alone', (count, sentence) => {
    const notes = Object.fromEntries(
      Array.from({ length: count }, (_, at) => [`notes-${at}.md`, '# Notes\n']),
    );
    expect(check({ 'net.md': passing, ...notes }, '.').output).toContain(`it passes. ${sentence}\n`);
  });

  it.each(['check', 'coverage', 'print'])(
    'says once in %s that the sequence of the call is not there',
    (name) => {
      const files = { 'book/a.md': passing, 'book/b.md': passing, 'book/c.md': passing };
      const outcome = terminal(files, pondPhonics)(name, 'book', '--sequence', 'far.yaml');
      expect(outcome.exitCode).toBe(2);
      expect(outcome.errors.match(/far\.yaml {2}The sequence is not there\.\n/g)).toHaveLength(1);
      expect(outcome.errors).not.toContain('.md');
    },
  );
});

describe('what a writer may have overlooked', () => {
  it('says that a story has no words yet, and never that all of them are readable', () => {
    const outcome = check({ 'net.md': '---\nlesson: "2"\n---\n    The net sat.\n' }, 'net.md');
    expect(outcome.output).toContain('lesson 2: no words yet: falls short\n');
    expect(outcome.output).toContain('net.md:4:5  This line begins with four spaces');
    expect(outcome.output).not.toContain('100');
  });

  it.each([
    ['Lesson: "2"', 'net.md:2:1  This file is not checked: a story names its lesson with “lesson:”'],
    ['LESSON: "2"', 'net.md:2:1  This file is not checked'],
  ])('names a lesson that is nearly named, in a folder too: %s', (line, message) => {
    const outcome = check({ 'book/net.md': `---\n${line}\n---\nThe net.\n`, 'book/a.md': passing }, 'book');
    expect(outcome).toMatchObject({ exitCode: 2, errors: expect.stringContaining(`book/${message}`) });
  });

  it.each(['sequence.yml', 'Sequence.yaml'])('names a sequence with a mistaken name: %s', (name) => {
    const call = terminal({ [name]: pondSequence, 'a/net.md': passing }, pondPhonics);
    const message = `There is a file “${name}”; rename it to sequence.yaml`;
    expect(call('check', 'a').errors).toContain(message);
    expect(call('words', '--lesson', '1').errors).toContain(message);
  });

  it('says that a sequence with a mistaken name is passed by for one further up', () => {
    const call = terminal(
      { 'sequence.yaml': pondSequence, 'a/sequence.yml': '', 'a/net.md': passing },
      pondPhonics,
    );
    const outcome = call('check', 'a');
    expect(outcome.errors).toBe(
      'a/sequence.yml  This file is not read: rename it to sequence.yaml. Used in its place is sequence.yaml.\n',
    );
    expect(outcome).toMatchObject({
      exitCode: 0,
      output: expect.stringContaining('checked by sequence.yaml'),
    });
  });

  it('says first that a text is too long to be read to its end', () => {
    const { output } = check({ 'net.md': `${passing}The night.\n${'The net.\n'.repeat(20_001)}` }, 'net.md');
    expect(output.split('\n')[1]).toMatch(/^net\.md:200\d\d:1 {2}The text is too long: from here on/);
  });

  it('takes no notice of spaces that do not break, which word processors set', () => {
    expect(check({ 'net.md': passing.replace('lesson: ', 'lesson:\u00a0') }, 'net.md').exitCode).toBe(0);
  });

  it('takes no notice of curly quotation marks around the lesson', () => {
    expect(check({ 'net.md': passing.replace('"2"', '“2”') }, 'net.md').exitCode).toBe(0);
  });
});

describe('which files check reads', () => {
  const paths = (outcome: Outcome): readonly string[] =>
    [...outcome.output.matchAll(/^(\S+) {2}.*: (?:passes|falls short)$/gm)].map(([, path]) => path ?? '');

  it('walks folders by name, numbers by value, and passes by what is no story', () => {
    const outcome = check(
      {
        'book/10-c.md': passing,
        'book/2-b.md': passing,
        'book/part/d.markdown': passing,
        'book/notes.md': '# Notes for the team\n',
        'book/words.txt': 'The net sat.\n',
        'book/node_modules/e.md': passing,
        'book/.drafts/f.md': passing,
      },
      'book',
    );
    expect(paths(outcome)).toEqual(['book/2-b.md', 'book/10-c.md', 'book/part/d.markdown']);
    expect(outcome).toMatchObject({ exitCode: 0, errors: '' });
  });

  it('checks a file once that two paths lead to', () => {
    expect(paths(check({ 'book/a.md': passing }, 'book/a.md', 'book', './book/a.md'))).toEqual(['book/a.md']);
  });

  it('checks every file at the lesson of --lesson, plain text too', () => {
    const files = {
      'book/a.md': '# Net\n\nThe net sat.\n',
      'book/b.txt': 'The night sat.\n',
      'book/c.md': short,
    };
    const outcome = check(files, '--lesson', '3', 'book');
    expect(paths(outcome)).toEqual(['book/a.md', 'book/b.txt', 'book/c.md']);
    expect(outcome.exitCode).toBe(0);
  });

  it('takes the nearest sequence, above the working folder too', () => {
    const easy = pondSequence.replace('readable: 75', 'readable: 50');
    expect(check({ 'book/a.md': short, 'book/sequence.yaml': easy }, 'book').exitCode).toBe(0);
    const above = terminal({ '/home/sequence.yaml': easy, 'book/a.md': short }, pondPhonics);
    expect(above('check', 'book').exitCode).toBe(0);
  });

  it('takes the sequence that the story names, and --sequence before it', () => {
    const easy = pondSequence.replace('readable: 75', 'readable: 50');
    const story = short.replace('lesson: "2"', 'lesson: "2"\nsequence: ../easy.yaml');
    expect(check({ 'book/a.md': story, 'easy.yaml': easy }, 'book').exitCode).toBe(0);
    expect(
      check({ 'book/a.md': story, 'easy.yaml': easy }, 'book', '--sequence', 'sequence.yaml').exitCode,
    ).toBe(1);
  });
});

describe('what check cannot use', () => {
  it.each<[string, Files, string[], string]>([
    ['a path that is not there', {}, ['no.md'], 'no.md  There is no such file or folder.'],
    [
      'a named file that is no story',
      { 'a.md': 'Notes.\n' },
      ['a.md'],
      'a.md  This is not a story: it begins with no front matter that names a lesson. Add one, or use --lesson NAME.',
    ],
    [
      'a named file whose front matter has no lesson',
      { 'a.md': '---\ntitle: Notes\n---\nNotes.\n' },
      ['a.md'],
      'a.md  This is not a story: its front matter has no lesson. Add one, or use --lesson NAME.',
    ],
    ['a folder without markdown', { 'a/b.txt': '' }, ['a'], 'a  There is no markdown file in this folder.'],
    ['a folder without a story', { 'a/b.md': 'Notes.' }, ['a'], 'a  There is no story here'],
    [
      'a lesson the sequence does not have',
      { 'a.md': passing.replace('2', '20') },
      ['a.md'],
      'a.md:3:9  sequence.yaml has no lesson “20”. Its lessons are “1” to “3”.  [front-matter-problem]',
    ],
    [
      'the same by --lesson',
      { 'a.md': passing },
      ['a.md', '--lesson', 'June'],
      'a.md  sequence.yaml has no lesson “June”. Its lessons are “1” to “3”.',
    ],
    [
      'a sequence that is not there',
      { 'a.md': passing },
      ['a.md', '--sequence', 'b.yaml'],
      'b.yaml  The sequence is not there.',
    ],
    [
      'a named sequence that is not there',
      { 'a.md': passing.replace('lesson', 'sequence: b.yaml\nlesson') },
      ['a.md'],
      'a.md:3:11  The sequence “b.yaml” is not there.  [front-matter-problem]',
    ],
    [
      'a named sequence outside',
      { 'a.md': passing.replace('lesson', 'sequence: ../b.yaml\nlesson') },
      ['a.md'],
      'a.md:3:11  The sequence “../b.yaml” leads out of .; the sequence file must lie inside it, or be given with --sequence.  [front-matter-problem]',
    ],
    [
      'a sequence by an absolute path',
      { 'a.md': passing.replace('lesson', 'sequence: /b.yaml\nlesson') },
      ['a.md'],
      'a.md:3:11  The sequence “/b.yaml” is not a relative path; give the way from the story’s folder to the sequence file.',
    ],
    [
      'a file that is too large',
      { 'a.md': { kind: 'too-large', bytes: 6_000_000 } },
      ['a.md'],
      'a.md  The file is too large: it has 6.0 MB, and at most 5.0 MB are read.',
    ],
    [
      'a file that is not text',
      { 'a.md': { kind: 'unreadable', reason: 'it is not text in UTF-8' } },
      ['a.md'],
      'a.md  The file cannot be read: it is not text in UTF-8.',
    ],
    [
      'a lesson without a name',
      { 'a.md': '---\nlesson:\n---\nThe net.\n' },
      ['a.md'],
      'a.md:2:1  Name the lesson',
    ],
  ])('%s', (_, files, given, message) => {
    const outcome = check(files, ...given);
    expect(outcome.errors).toContain(message);
    expect(outcome).toMatchObject({ exitCode: 2, output: '' });
  });

  it('a story without any sequence', () => {
    const outcome = terminal({ 'a.md': passing }, pondPhonics)('check', 'a.md');
    expect(outcome.errors).toBe(
      'a.md:3:9  There is no sequence.yaml in the story’s folder or above it. Create one, or name one with --sequence FILE or with sequence: in the front matter.  [front-matter-problem]\n',
    );
    expect(outcome.exitCode).toBe(2);
  });

  it('names the sequences that stories of several were read by', () => {
    const other = { 'b.md': passing.replace('lesson:', 'sequence: other.yaml\nlesson:'), 'a.md': passing };
    expect(check({ 'other.yaml': pondSequence, ...other }, '.').output).toContain(
      '2 stories checked by sequence.yaml and other.yaml: all pass.',
    );
  });

  it('goes on with the other files', () => {
    const outcome = check({ 'a.md': passing }, 'no.md', 'a.md');
    expect(outcome.output).toContain(
      '1 story checked by sequence.yaml: it passes. 1 file could not be checked.',
    );
    expect(outcome.exitCode).toBe(2);
  });

  it('says what is wrong with a sequence once, at its place, and goes on with the rest of it', () => {
    const broken = pondSequence
      .replace('lessons:', 'lesons: 3\nlessons:')
      .replace('igh as in light', 'oa as in light');
    const outcome = check({ 'sequence.yaml': broken, 'a.md': passing, 'b.md': passing }, '.');
    expect(outcome.errors.match(/sequence\.yaml:3:1 .*\[sequence-problem\]/g)).toHaveLength(1);
    expect(outcome.errors.match(/sequence\.yaml:11:17 .*\[sequence-problem\]/g)).toHaveLength(1);
    expect(outcome.output).toContain('2 stories checked by sequence.yaml: all pass.');
    expect(outcome.exitCode).toBe(2);
  });
});

describe('check --format json', () => {
  const story = `---
title: The Red Net
lesson: "2"
story words:
  pond: a small lake
---
# The Net

The night net. Zat 3!
`;

  it('is the report of the design', () => {
    const { output, errors, exitCode } = check({ 'book/a.md': story }, 'book', '--format', 'json');
    expect({ errors, exitCode }).toEqual({ errors: '', exitCode: 1 });
    const report = JSON.parse(output);
    expect(Object.keys(report)).toEqual(['version', 'stories', 'sequenceProblems', 'unusable', 'leftAlone']);
    expect(report.version).toBe(1);
    expect(report.stories).toHaveLength(1);
    const { findings, ...rest } = report.stories[0];
    const part = (letters: string, sounds: string[], ...spans: number[][]) => ({ letters, sounds, spans });
    expect(rest).toEqual({
      path: 'book/a.md',
      title: 'The Red Net',
      lesson: '2',
      counts: { words: 5, decodable: 1, 'high-frequency': 1, name: 0, 'story-word': 0, 'not-taught': 3 },
      readable: 0.4,
      decodable: 0.2,
      target: 0.75,
      passes: false,
      words: [
        {
          text: 'The',
          page: 1,
          line: 9,
          column: 1,
          kind: 'high-frequency',
          new: false,
          parts: [part('th', ['DH'], [0, 2]), part('e', ['AH'], [2, 3])],
          missing: [],
        },
        {
          text: 'night',
          page: 1,
          line: 9,
          column: 5,
          kind: 'not-taught',
          new: false,
          parts: [part('n', ['N'], [0, 1]), part('igh', ['AY'], [1, 4]), part('t', ['T'], [4, 5])],
          missing: [{ spelling: 'igh', asIn: 'light', lesson: '3' }],
        },
        {
          text: 'net',
          page: 1,
          line: 9,
          column: 11,
          kind: 'decodable',
          new: false,
          parts: [part('n', ['N'], [0, 1]), part('e', ['EH'], [1, 2]), part('t', ['T'], [2, 3])],
          missing: [],
        },
        {
          text: 'Zat',
          page: 1,
          line: 9,
          column: 16,
          kind: 'not-taught',
          new: false,
          parts: [part('z', ['Z'], [0, 1]), part('a', ['AE'], [1, 2]), part('t', ['T'], [2, 3])],
          missing: [{ spelling: 'z', asIn: null, lesson: null }],
        },
        {
          text: '3',
          page: 1,
          line: 9,
          column: 20,
          kind: 'not-taught',
          new: false,
          parts: [],
          missing: [],
        },
      ],
      sentences: [
        { line: 9, words: 3, text: 'The night net.' },
        { line: 9, words: 2, text: 'Zat 3!' },
      ],
    });
    expect(findings[0]).toMatchObject({
      rule: 'front-matter-problem',
      severity: 'information',
      line: 2,
      column: 8,
    });
    expect(findings[1]).toMatchObject({ rule: 'under-target', line: 3, column: 9, endLine: 3 });
    expect(findings).toContainEqual({
      rule: 'untaught-spelling',
      severity: 'warning',
      line: 9,
      column: 5,
      endLine: 9,
      endColumn: 10,
      message: '“night” needs igh as in light, which lesson 3 teaches.',
    });
    expect(findings.map(({ rule }: { rule: string }) => rule)).toEqual([
      'front-matter-problem',
      'under-target',
      'unused-story-word',
      'untaught-spelling',
      'untaught-spelling',
      'guessed-reading',
      'untaught-spelling',
    ]);
  });

  it('names missing forms', () => {
    const forms = `title: Forms
targets: { practice: 0 }
lessons:
  - name: "1"
    spellings: [r as in rug, a as in map, bb as in rabbit, i as in sit, t as in top, s as in sun, n as in net, e as in net, p as in pond, o as in pond, d as in pond]
    syllables: 1
    blends: []
  - name: "2"
    syllables: 2
`;
    const { output } = check(
      { 'sequence.yaml': forms, 'a.md': '---\nlesson: "1"\n---\nrabbit pond\n' },
      'a.md',
      '--format=json',
    );
    const words: { missing: unknown }[] = JSON.parse(output).stories[0].words;
    expect(words.map(({ missing }) => missing)).toEqual([
      [{ form: 'syllables', value: 2, lesson: '2' }],
      [{ form: 'blend', value: 'end', letters: 'nd', lesson: null }],
    ]);
  });

  it('has one story a line, and none when nothing could be checked', () => {
    const two = check({ 'a.md': passing, 'b.md': passing }, '.', '--format', 'json').output;
    expect(
      two
        .trimEnd()
        .split('\n')
        .slice(0, 4)
        .map((line) => line.slice(0, 9)),
    ).toEqual(['{"version', '{"path":"', '{"path":"', '],']);
    expect(JSON.parse(check({}, 'no.md', '--format', 'json').output)).toEqual({
      version: 1,
      stories: [],
      sequenceProblems: [],
      unusable: [{ path: 'no.md', message: 'There is no such file or folder.' }],
      leftAlone: [],
    });
  });

  it('says what is wrong in the sequence, what could not be used and what was left alone', () => {
    const files = {
      'sequence.yaml': `${pondSequence}    colour: red\n`,
      'a.md': passing,
      'b.md': passing.replace('"2"', '"June"'),
      'notes.md': '# Notes\n',
    };
    const report = JSON.parse(terminal(files, pondPhonics)('check', '.', '--format', 'json').output);
    expect(report.stories.map(({ path }: { path: string }) => path)).toEqual(['a.md']);
    expect(report.sequenceProblems).toMatchObject([{ path: 'sequence.yaml', column: 5 }]);
    expect(report.sequenceProblems[0].line).toBe(files['sequence.yaml'].trimEnd().split('\n').length);
    expect(report.unusable).toMatchObject([{ path: 'b.md', line: 3, column: 9 }]);
    expect(report.leftAlone).toEqual(['notes.md']);
  });

  it.each([
    ['LF', '\n'],
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('counts lines and UTF-16 columns in a text with %s', (_, lineEnd) => {
    const text = ['---', 'lesson: "2"', '---', '\u{1f98a} e\u0301 night', ''].join(lineEnd);
    const { output } = check({ 'a.md': text }, 'a.md', '--format', 'json');
    expect(JSON.parse(output).stories[0].words.at(-1)).toMatchObject({ text: 'night', line: 4, column: 7 });
  });
});
