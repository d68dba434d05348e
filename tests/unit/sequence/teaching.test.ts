import { describe, expect, it, test } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { resolveSpelling } from '../../../server/src/sequence/resolve-spelling.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { beginnersWords, handPhonics } from '../../support/hand-phonics.ts';

const phonics = handPhonics(beginnersWords, ['zib']);

function resolved(line: string) {
  const [letters = '', keyWord = ''] = line.split(' as in ');
  const { pattern, problem: findProblem } = resolveSpelling(
    { value: { letters, keyWord }, span: { start: 3, end: 9 } },
    phonics,
  );
  const problem = findProblem();
  return {
    pattern: pattern?.map((step) => `${step.letters}=${step.sounds.join('+')}`).join(' '),
    problem: problem === undefined ? undefined : `${problem.severity}: ${problem.message}`,
    span: problem?.span,
  };
}

describe('X as in W', () => {
  test.each([
    ['igh as in light', 'igh=AY'],
    ['a_e as in cake', 'a_e=EY'],
    ['ake as in cake', 'a_e=EY k=K'],
    ['ca_e as in cake', 'c=K a_e=EY'],
    ['all as in ball', 'a=AO ll=L'],
    ['nk as in pink', 'n=NG k=K'],
    ['ing as in king', 'i=IH ng=NG'],
    ['x as in box', 'x=K+S'],
    ['le as in castle', 'le=AH+L'],
    ['t as in listen', 't='],
    ['s as in Sister', 's=S'],
    ['s as in his', 's=Z'],
  ])('%s teaches %s', (line, pattern) => {
    expect(resolved(line)).toMatchObject({ pattern, problem: undefined });
  });

  test.each([
    ['gh as in night', 'error: “gh” is not a grapheme of “night”: night is n-igh-t.'],
    ['i as in night', 'error: “i” is not a grapheme of “night”: night is n-igh-t.'],
    ['ak as in cake', 'error: “ak” is not a grapheme of “cake”: cake is c-a_e-k.'],
    ['o_e as in cake', 'error: “o_e” is not a grapheme of “cake”: cake is c-a_e-k.'],
    ['ee as in cake', 'error: “ee” does not stand in “cake”, which is c-a_e-k.'],
    ['a as in unheardof', 'error: “unheardof” is not a word that could show a sound.'],
  ])('%s is refused: %s', (line, problem) => {
    expect(resolved(line)).toEqual({ pattern: undefined, problem, span: { start: 3, end: 9 } });
  });

  it('takes the stressed of two sounds and says so', () => {
    expect(resolved('e as in seven')).toMatchObject({
      pattern: 'e=EH',
      problem: expect.stringMatching(
        /^warning: “e” stands in “seven” \(s-e-v-e-n\) more than once.* The first one is taught/,
      ),
    });
  });

  it('takes the stressed one also where it is the second', () => {
    const banana = handPhonics('banana b=B a=AH0 n=N a=AE1 n=N a=AH0 / ba-nan-a');
    const { pattern, problem } = resolveSpelling(
      { value: { letters: 'a', keyWord: 'banana' }, span: { start: 0, end: 1 } },
      banana,
    );
    expect(pattern?.[0]?.sounds).toEqual(['AE']);
    expect(problem()?.message).toMatch(/The stressed one is taught/);
  });

  it('takes the reading of the key word that has the grapheme', () => {
    const lexicon = handPhonics(
      'of o=AH1 f=V\nof o=AO1 ff=F'.replace('\nof o=AO1 ff=F', '\nbow b=B o=AA1 w=W\nbow b=B ow=OW1'),
    );
    const { pattern, problem } = resolveSpelling(
      { value: { letters: 'ow', keyWord: 'bow' }, span: { start: 0, end: 1 } },
      lexicon,
    );
    expect(pattern?.map(({ letters }) => letters)).toEqual(['o', 'w']);
    expect(problem()).toBeUndefined();
  });

  it('warns of a key word whose sounds are only guessed', () => {
    expect(resolved('i as in zib').problem).toMatch(
      /^warning: “zib” is in no word list; its sounds \(z-i-b\)/,
    );
  });
});

describe('a teaching', () => {
  const text = `
targets: { sentence: 5 }
lessons:
  - name: "1"
    spellings: [m as in mud, s as in sun, a as in map]
    high-frequency words: [I, Said]
    targets: { page: 10 }
  - name: "2"
    spellings: [gh as in night, s as in sat, o as in dog]
    high-frequency words: [said, don’t]
    punctuation: ["!", '"']
    targets: { sentence: 6 }
  - name: " 3 "
    spellings: [o as in top]
    targets: { sentence: 7 }
`;
  const teaching = teachingOf(readSequence(text), phonics);
  const at = (lesson: string) => teaching.taughtAt(lesson) ?? expect.fail();

  it('reports spellings at their place, beside the problems of the file', () => {
    expect(
      teaching.problems.map(({ message, span }) => `[${text.slice(span.start, span.end)}] ${message}`),
    ).toEqual([
      '[gh as in night] “gh” is not a grapheme of “night”: night is n-igh-t.',
      '[s as in sat] “s as in sun”, lesson 1, has the same sound and teaches this already.',
      '[said] “said” is taught already in lesson 1. What is taught stays taught.',
      '[o as in top] “o as in dog”, lesson 2, has the same sound and teaches this already.',
    ]);
  });

  it('keeps a spelling that is taught a second time apart from the new ones', () => {
    expect(teaching.spellings.map(({ line }) => line.keyWord)).toEqual([
      'mud',
      'sun',
      'map',
      'sat',
      'dog',
      'top',
    ]);
  });

  it('gives the same object for a lesson every time', () => {
    expect(at('1')).toBe(at(' 1'));
    expect(at('1')).toBe(teaching.taughtBy(at('1').lesson));
    expect(teaching.taughtAt('4')).toBeUndefined();
    expect(teaching.lessonNamed('3')?.index).toBe(2);
  });

  it('knows what is new in a lesson and nothing taught before', () => {
    expect(at('1').newSpellings.map(({ line }) => line.keyWord)).toEqual(['mud', 'sun', 'map']);
    expect(at('2').newSpellings.map(({ line }) => line.keyWord)).toEqual(['dog']);
    expect(at('3').newSpellings).toEqual([]);
    expect(at('1').newHighFrequencyWords).toEqual(['I', 'Said']);
    expect(at('2').newHighFrequencyWords).toEqual(['don’t']);
  });

  it('knows high-frequency words in any capitals and with any apostrophe', () => {
    expect(at('1').highFrequencyLesson('SAID')?.name).toBe('1');
    expect(at('3').highFrequencyLesson('said')?.name).toBe('1');
    expect(at('1').highFrequencyLesson("don't")).toBeUndefined();
    expect(at('2').highFrequencyLesson("Don't")?.name).toBe('2');
    expect(at('2').highFrequencyLesson('constructor')).toBeUndefined();
  });

  it('lets the latest lesson set a target', () => {
    expect(at('1').targets).toMatchObject({ sentence: 5, page: 10, readable: 95 });
    expect(at('2').targets).toMatchObject({ sentence: 6, page: 10 });
    expect(at('3').targets).toMatchObject({ sentence: 7, page: 10 });
  });

  it('opens a mark with its lesson, curly or straight, and a stop from the start', () => {
    expect(at('1').punctuationLesson('.')).toBe('open');
    expect(at('1').punctuationLesson('!')).toBeUndefined();
    expect(at('1').laterPunctuationLesson('!')?.name).toBe('2');
    expect(at('2').punctuationLesson('”')).toMatchObject({ name: '2' });
    expect(at('2').laterPunctuationLesson('”')).toBeUndefined();
    expect(at('3').punctuationLesson('?')).toBeUndefined();
    expect(at('3').laterPunctuationLesson('?')).toBeUndefined();
  });

  it('leaves marks open where no lesson mentions them, and the stop closed where one lists it', () => {
    const free = teachingOf(readSequence('lessons: [{name: "1"}]'), phonics);
    expect(free.taughtAt('1')?.punctuationLesson('!')).toBe('open');
    const strict = teachingOf(
      readSequence('lessons: [{name: "1"}, {name: "2", punctuation: ["."]}]'),
      phonics,
    );
    expect(strict.taughtAt('1')?.punctuationLesson('.')).toBeUndefined();
    expect(strict.taughtAt('2')?.punctuationLesson('.')).toMatchObject({ name: '2' });
  });

  it('judges one reading at one lesson once', () => {
    const reading = phonics.readingsOf('map')[0] ?? expect.fail();
    expect(at('1').judge(reading)).toBe(at('1').judge(reading));
  });
});
