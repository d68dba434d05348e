import { describe, expect, it, test } from 'vitest';
import { longestSequence, readSequence } from '../../../server/src/sequence/read-sequence.ts';

/** Problems as a writer sees them: the marked text, then what is said of it. */
function problemsIn(text: string): string[] {
  return readSequence(text).problems.map(
    ({ message, span, severity }) => `${severity}: [${text.slice(span.start, span.end)}] ${message}`,
  );
}

/** What the lessons of a text teach, a line a lesson. */
function lessonsIn(text: string): string[] {
  return readSequence(text).lessons.map((lesson) => {
    const spellings = lesson.spellings.map(({ value }) => `${value.letters}/${value.keyWord}`).join(' ');
    return `${lesson.name}${lesson.title === undefined ? '' : ` "${lesson.title}"`}: ${spellings}`;
  });
}

const willowLane = `title: Willow Lane, grade 1
targets:
  readable: 97.5
  story words: 2
lessons:
  - name: "1"
    title: m, s, t and short a
    spellings: [m as in mud, s as in sun, t as in top, a as in map]
    high-frequency words: [I, the]
  - name: "2"
    spellings:
      - A_E as in cake
      - all   as in ball
    high-frequency words: [is, don't, no]
    endings: [s, "'s", -ing]
    blends: [end]
    syllables: 2
    punctuation: ["!", "?", “, ...]
    targets: { sentence: 8 }
pronunciations:
  Zib: z i b
`;

describe('a good file', () => {
  const sequence = readSequence(willowLane);

  it('is read whole and without complaint', () => {
    expect(sequence.problems).toEqual([]);
    expect(sequence.title).toBe('Willow Lane, grade 1');
    expect(lessonsIn(willowLane)).toEqual([
      '1 "m, s, t and short a": m/mud s/sun t/top a/map',
      '2: a_e/cake all/ball',
    ]);
    const second = sequence.lessons[1];
    expect(second?.highFrequencyWords.map(({ value }) => value)).toEqual(['is', "don't", 'no']);
    expect(second?.endings.map(({ value }) => value)).toEqual(['s', "'s", 'ing']);
    expect(second?.blends.map(({ value }) => value)).toEqual(['end']);
    expect(second?.syllables?.value).toBe(2);
    expect(second?.punctuation.map(({ value }) => value)).toEqual(['!', '?', '"', '…']);
    expect(second?.targets).toEqual({ sentence: 8 });
    expect(sequence.pronunciations.map(({ word, graphemes }) => [word.value, graphemes.value])).toEqual([
      ['Zib', 'z i b'],
    ]);
  });

  it('fills in the targets it does not set', () => {
    expect(sequence.targets).toEqual({
      readable: 97.5,
      sentence: 7,
      page: 20,
      practice: 8,
      repeats: 3,
      storyWords: 2,
    });
  });

  it('knows which dimensions it mentions', () => {
    expect([...sequence.mentions].sort()).toEqual(['blends', 'endings', 'punctuation', 'syllables']);
    expect(readSequence('lessons: [{name: a, endings: []}]').mentions).toEqual(new Set(['endings']));
  });

  it.each([
    ['with Windows line ends', willowLane.replaceAll('\n', '\r\n')],
    ['with mixed line ends', willowLane.replace('\n', '\r\n')],
    ['with a byte-order mark', `\ufeff${willowLane}`],
    ['without a last line end', willowLane.trimEnd()],
    ['with comments', willowLane.replaceAll('\n', ' # so far\n')],
  ])('reads the same %s', (_, text) => {
    const read = readSequence(text);
    expect(read.problems).toEqual([]);
    expect(lessonsIn(text)).toEqual(lessonsIn(willowLane));
    for (const lesson of read.lessons) {
      expect(text.slice(lesson.nameSpan.start, lesson.nameSpan.end)).toBe(`"${lesson.name}"`);
      for (const { value, span } of lesson.highFrequencyWords) {
        expect(text.slice(span.start, span.end)).toBe(value);
      }
    }
  });

  it('takes a number as a name', () => {
    expect(lessonsIn('lessons: [{name: 3}, {name: 03}, {name: 1.0}]')).toEqual(['3: ', '03: ', '1.0: ']);
  });
});

describe('a problem stands at its place', () => {
  const lesson = (lines: string): string =>
    `lessons:\n  - name: "1"\n    spellings: [m as in mud]\n${lines.replace(/^/gm, '    ')}\n`;

  test.each<[name: string, text: string, place: string, message: RegExp, severity?: 'warning']>([
    ['empty file', '', '', /empty/],
    ['only a comment', '# soon', '# soon', /empty/],
    ['a list at the top', '- name: 1', '- name: 1', /A sequence is written as keys and values/],
    ['no lessons', 'title: Day', 'title: Day', /no lessons/],
    ['lessons without a lesson', 'title: Day\nlessons:', 'lessons', /no lessons/],
    ['lessons as text', 'lessons: many', 'many', /“lessons” is a list/],
    [
      'a lesson as text',
      'lessons:\n  - first\n  - name: 2',
      'first',
      /A lesson is written as keys and values/,
    ],
    ['a lesson without a name', 'lessons:\n  - title: x', 'title', /no name/],
    [
      'a key that is near a known one',
      lesson('speling: [s as in sun]'),
      'speling',
      /Did you mean “spellings”\?/,
    ],
    [
      'a key with a low line',
      lesson('high_frequency_words: [the]'),
      'high_frequency_words',
      /“high-frequency words”/,
    ],
    ['a top key that is near', 'lesons: [{name: a}]', 'lesons', /Did you mean “lessons”\?/],
    ['a key nobody knows', lesson('focus: short a'), 'focus', /left aside.*Known are name, title/, 'warning'],
    ['a target nobody knows', lesson('targets: {words: 7}'), 'words', /Targets has no “words”/, 'warning'],
    ['a key twice', lesson('title: a\ntitle: b'), 'title', /has “title” twice/],
    ['two lessons of a name', 'lessons:\n  - name: "1"\n  - name: 1', '1', /Another lesson is named “1”/],
    ['a list where text belongs', lesson('title: [a, b]'), '[a, b]', /“title” is a piece of text/],
    [
      'a map in a list',
      lesson('high-frequency words: [the, {a: b}]'),
      '{a: b}',
      /Each item of “high-frequency words”/,
    ],
    ['a gap in a list', lesson('high-frequency words: [the, ""]'), '""', /Each item of/],
    [
      'a spelling without its sound',
      lesson('').replace('[m as in mud]', '[m]'),
      'm',
      /does not say its sound/,
    ],
    ['a spelling with a slip', lesson('').replace('m as in mud', 'm as mud'), 'm as mud', /ai as in rain/],
    [
      'a spelling with digits',
      lesson('').replace('m as in mud', 'm1 as in mud'),
      'm1 as in mud',
      /is not a spelling/,
    ],
    [
      'a key word that is no word',
      lesson('').replace('m as in mud', 'm as in 7'),
      'm as in 7',
      /“7” is not a word/,
    ],
    [
      'a spelling twice',
      lesson('').replace('mud]', 'mud, M as in Mud]'),
      'M as in Mud',
      /taught already/,
      'warning',
    ],
    ['a word twice', lesson('high-frequency words: [the, The]'), 'The', /earlier in this lesson/, 'warning'],
    ['two words as one', lesson('high-frequency words: [a lot]'), 'a lot', /not one word/],
    ['an unknown ending', lesson('endings: [s, ings]'), 'ings', /not an ending\. Did you mean “ing”\?/],
    ['an unknown blend', lesson('blends: [begin]'), 'begin', /Known are start, end, three/],
    ['no number of syllables', lesson('syllables: two'), 'two', /“syllables” is the number/],
    ['nought syllables', lesson('syllables: 0'), '0', /“syllables” is the number/],
    ['a word as mark', lesson('punctuation: [comma]'), 'comma', /not a punctuation mark/],
    ['two marks as one', lesson('punctuation: ["!?"]'), '"!?"', /not a punctuation mark/],
    ['a bare mark', lesson('punctuation: [!, "?"]'), '!', /needs quotes/],
    ['a share over 100', 'targets: {readable: 101}\nlessons: [{name: a}]', '101', /percentage from 0 to 100/],
    ['half a word', lesson('targets: {sentence: 7.5}'), '7.5', /whole number from 1/],
    ['a target in words', lesson('targets: {page: many}'), 'many', /whole number from 1/],
    ['less than nothing', lesson('targets: {practice: -1}'), '-1', /whole number from 0/],
    ['targets as a list', lesson('targets: [7]'), '[7]', /Targets is written as keys and values/],
    ['a reference', 'lessons:\n  - name: &a one\n  - name: *a', '*a', /References .* are not read/],
    [
      'a pronunciation of nothing',
      'lessons: [{name: a}]\npronunciations:\n  Zib:',
      'Zib',
      /no pronunciation/,
    ],
    ['a tab', 'lessons:\n\t- name: "1"', '\t', /tab/],
    ['a quote never closed', 'title: "Day\nlessons: [{name: a}]', 'title: "Day', /quotation mark/],
    ['a list never closed', lesson('endings: [s, ed\nsyllables: 2'), 'endings: [s, ed', /no closing \]/],
    ['a colon in plain text', lesson('title: Day: The Pond'), 'D', /needs the whole text in quotes/],
    ['a line without a colon', lesson('title Day'), 'title Day', /colon and a space are missing/],
    ['a bracket too many', lesson('endings: [s]]'), ']', /does not belong here/],
    ['a line out of line', lesson(' endings: [s]'), 'endings: [s]', /under its neighbours/],
  ])('%s', (_, text, place, message, severity) => {
    const found = problemsIn(text);
    expect(found).toContainEqual(expect.stringMatching(message));
    const [first] = found.filter((problem) => message.test(problem));
    expect(first).toContain(`${severity ?? 'error'}: [${place}] `);
    expect(found).toHaveLength(1);
  });

  it('says nothing of a syllable count that is repeated, but warns of one that sinks', () => {
    const text = (count: number): string =>
      `lessons: [{name: a, syllables: 2}, {name: b, syllables: ${count}}]`;
    expect(problemsIn(text(2))).toEqual([]);
    expect(problemsIn(text(1))).toEqual([
      'warning: [1] Words of 2 syllables are open since lesson a. What is taught stays taught.',
    ]);
  });
});

describe('what word processors and haste make of a file', () => {
  it.each([
    ['a list without brackets', 'spellings: m as in mud, s as in sun'],
    ['one item without brackets', 'spellings: m as in mud\n    endings: s, ing'],
    ['curly quotation marks', 'spellings: [“m as in mud”, ‘s as in sun’]'],
    ['spaces that do not break', 'spellings: [m as\u00a0in mud,\u00a0s as in sun]'],
  ])('%s is read as it is meant', (_, lines) => {
    const text = `lessons:\n  - name: "1"\n    ${lines}\n`;
    const { lessons, problems } = readSequence(text);
    expect(lessons[0]?.spellings[0]?.value).toEqual({ letters: 'm', keyWord: 'mud' });
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(problems.map(({ message }) => message)).toEqual(
      lines.includes('[')
        ? []
        : expect.arrayContaining([expect.stringContaining('needs brackets around its items')]),
    );
    for (const { span } of [...(lessons[0]?.spellings ?? []), ...(lessons[0]?.endings ?? [])]) {
      expect(text.slice(span.start, span.end)).toMatch(/^[“‘]?(?:m|s)(?:$| )|^ing$/);
    }
  });
});

describe('one bad line spoils only itself', () => {
  const good = [
    '  - name: "1"',
    '    title: first',
    '    spellings: [m as in mud, s as in sun]',
    '  - name: "2"',
    '    title: second',
    '    spellings: [a as in map]',
    '  - name: "3"',
    '    spellings: [t as in top]',
  ];
  const changed = (lines: readonly string[], at: number, line: string): string[] =>
    lines.map((old, index) => (index === at ? line : old));
  const withLine = (at: number, line: string): string => `lessons:\n${changed(good, at, line).join('\n')}\n`;
  const all = ['1 "first": m/mud s/sun', '2 "second": a/map', '3: t/top'];

  test.each<[text: string, lessons: string[]]>([
    [withLine(1, '    title: "first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '    title: @first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '    title first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '    title: first: day'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '     title: first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '  title: first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '\ttitle: first'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, '---'), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(1, `    title: ${'['.repeat(20_000)}`), ['1: m/mud s/sun', ...all.slice(1)]],
    [withLine(2, '    spellings: [m as in mud'), ['1 "first": ', ...all.slice(1)]],
    [withLine(2, '    spellings: [m as in mud]]'), ['1 "first": ', ...all.slice(1)]],
    [withLine(2, "    spellings: [m as in mud, 's as in sun]"), ['1 "first": ', ...all.slice(1)]],
    [withLine(2, '    spellings: [m as in mud, s as sun]'), ['1 "first": m/mud', ...all.slice(1)]],
    [withLine(2, '    spellings: {m as in mud'), ['1 "first": ', ...all.slice(1)]],
    [withLine(3, '  - name: "2'), [all[0] ?? '', '(no name) "second": a/map', all[2] ?? '']],
    [withLine(3, '  - name:2'), [all[0] ?? '', '(no name) "second": a/map', all[2] ?? '']],
    [withLine(3, '  -\n name: "2"'), [all[0] ?? '', '(no name) "second": a/map', all[2] ?? '']],
    // What is only misspelt is read as what it is near to.
    [withLine(3, '  - nmae: "2"'), all],
    [withLine(2, '    speling: [m as in mud, s as in sun]'), all],
    [withLine(2, '    spellings: [m as in mud, s as in sun]').replace('lessons', 'lesons'), all],
    [withLine(2, '    s\n pellings: [m as in mud, s as in sun]'), ['1 "first": ', ...all.slice(1)]],
  ])('%j', (text, lessons) => {
    expect(lessonsIn(text)).toEqual(lessons);
    expect(problemsIn(text).length).toBeGreaterThan(0);
  });

  it('holds for several bad lines at once', () => {
    const lines = changed(changed(good, 1, '    title: @first'), 5, '    spellings: [a as in map');
    const text = `title: "Day\nlessons:\n${lines.join('\n')}\n`;
    expect(lessonsIn(text)).toEqual(['1: m/mud s/sun', '2 "second": ', '3: t/top']);
    expect(problemsIn(text)).toHaveLength(3);
  });
});

describe('monstrous files', () => {
  it('refuses a file over the limit with a reason', () => {
    const text = `title: big\n${'# more\n'.repeat(longestSequence / 6)}`;
    expect(problemsIn(text)).toEqual([
      expect.stringMatching(/error: \[title: big\] .*longer than 500,000 characters/),
    ]);
  });

  it('does not unfold a bomb of aliases', () => {
    const levels = Array.from(
      { length: 30 },
      (_, level) => `  l${level + 1}: &l${level + 1} [${Array(9).fill(`*l${level}`).join(', ')}]`,
    );
    const text = `pronunciations:\n  l0: &l0 z\n${levels.join('\n')}\nlessons:\n  - name: "1"\n    spellings: *l30\n`;
    expect(lessonsIn(text)).toEqual(['1: ']);
    expect(problemsIn(text).at(-1)).toMatch(/References/);
  });

  it('shows the first 200 problems and says that there are more', () => {
    const text = `lessons:\n${'  - speling: []\n    name: x\n'.repeat(300)}`;
    const found = problemsIn(text);
    expect(found).toHaveLength(201);
    expect(found.at(-1)).toMatch(/more problems follow/);
  });

  it('gives up mending a large broken file, and still reports it', () => {
    const text = `lessons:\n${'  - name: "1\n    title: [\n'.repeat(4_000)}`;
    expect(problemsIn(text)).toHaveLength(201);
  });
});
