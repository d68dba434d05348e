import { isVowel, type Phoneme, phonemes, type Stress } from '../../server/src/phonics/phoneme.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { type Ending, endings, type Part, type Reading } from '../../server/src/phonics/reading.ts';
import { handWordList } from './hand-word-list.ts';

/**
 * A small Phonics from a table written by hand, so that tests of other layers need neither disk nor lexicon. A line of
 * the table is one reading: the word, its parts with their sounds, the syllables where there are several, and for an
 * inflected word the base and the ending:
 *
 *     cake    c=K a_e=EY1 k=K
 *     rabbit  r=R a=AE1 bb=B i=AH0 t=T / rab-bit
 *     hopped  h=HH o=AA1 pp=P ed=T < hop + ed
 *
 * A base stands above the words made of it. `guessed` words have the source `rule`.
 */
export function handPhonics(table: string, guessed: readonly string[] = []): Phonics {
  const readings = new Map<string, Reading[]>();
  for (const line of table.split('\n')) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word !== undefined && word !== '') {
      const known = readings.get(word) ?? [];
      known.push(readingOf(word, rest.join(' '), readings, guessed.includes(word) ? 'rule' : 'lexicon'));
      readings.set(word, known);
    }
  }
  return {
    readingsOf: (word) => readings.get(word.toLowerCase().replace('’', "'")) ?? [],
    isListed: (word) => readings.has(word.toLowerCase()),
    keyWordFor: (letters, sounds) => keyWords.get(`${letters} ${sounds.join(' ')}`),
    // The one merger the tests need: short o is AA in some words of the dictionary and AO in others.
    soundClass: (letters, sounds) => (letters === 'o' && sounds.join() === 'AO' ? 'AA' : sounds.join(' ')),
    commonSpellings: () => [{ letters: 'igh', keyWord: 'light' }],
    regularPart: () => undefined,
    heteronyms: { sensesOf: () => undefined, choose: () => 0 },
    words: handWordList(readings),
  };
}

const keyWords = new Map([
  ['igh AY', 'light'],
  ['i IH', 'sit'],
  ['ai EY', 'rain'],
]);

function readingOf(
  word: string,
  line: string,
  known: ReadonlyMap<string, readonly Reading[]>,
  source: Reading['source'],
): Reading {
  const [description = '', made] = line.split(' < ');
  const [sounds = '', division = word] = description.split(' / ');
  const parts = partsOf(word, sounds.trim().split(' '));
  const syllables = division.split('-').map((text) => ({ text, stress: 0 as Stress }));
  const reading: Reading = { source, parts, syllables };
  if (made === undefined) {
    return reading;
  }
  const [base = '', ending = ''] = made.split(' + ');
  const inner = known.get(base)?.[0];
  if (inner === undefined || !isEnding(ending)) {
    throw new Error(`The table has no base "${base}" or no ending "${ending}" for "${word}".`);
  }
  return { ...reading, inflection: { ending, base, reading: inner, baseParts: inner.parts.length } };
}

/** Lays the parts along the letters of the word; the second run of a split grapheme comes after the next part. */
function partsOf(word: string, described: readonly string[]): Part[] {
  const parts: { -readonly [Key in keyof Part]: Part[Key] }[] = [];
  let cursor = 0;
  let pending: { part: (typeof parts)[number]; letters: string } | undefined;
  const place = (letters: string): readonly [number, number] => {
    // An apostrophe is no grapheme's letter.
    while (word[cursor] === "'") {
      cursor += 1;
    }
    if (!word.startsWith(letters, cursor)) {
      throw new Error(`"${letters}" is not at ${cursor} of "${word}".`);
    }
    cursor += letters.length;
    return [cursor - letters.length, cursor];
  };
  for (const item of described) {
    const [letters = '', codes = ''] = item.split('=');
    const [first = '', second] = letters.split('_');
    const stress = /[012]/.exec(codes)?.[0];
    const part: (typeof parts)[number] = { letters, sounds: phonemesOf(codes), spans: [place(first)] };
    if (stress !== undefined) {
      part.stress = Number(stress) as Stress;
    }
    if (pending !== undefined) {
      pending.part.spans = [...pending.part.spans, place(pending.letters)];
      pending = undefined;
    }
    if (second !== undefined) {
      pending = { part, letters: second };
    }
    parts.push(part);
  }
  if (cursor !== word.length) {
    throw new Error(`The parts of "${word}" do not cover it.`);
  }
  return parts;
}

function phonemesOf(codes: string): Phoneme[] {
  return codes
    .split('+')
    .filter((code) => code !== '')
    .map((code) => {
      const phoneme = phonemes.find((name) => name === code.replace(/\d$/, ''));
      if (phoneme === undefined || (isVowel(phoneme) && !/\d$/.test(code))) {
        throw new Error(`"${code}" is not a sound, or a vowel without its stress.`);
      }
      return phoneme;
    });
}

function isEnding(text: string): text is Ending {
  return endings.some((ending) => ending === text);
}

/** Words for the tests of the sequence, cut as the conventions of the trade cut them. */
export const beginnersWords = `
  mud     m=M u=AH1 d=D
  sun     s=S u=AH1 n=N
  top     t=T o=AA1 p=P
  dog     d=D o=AO1 g=G
  map     m=M a=AE1 p=P
  sat     s=S a=AE1 t=T
  mat     m=M a=AE1 t=T
  pan     p=P a=AE1 n=N
  nap     n=N a=AE1 p=P
  sit     s=S i=IH1 t=T
  pit     p=P i=IH1 t=T
  bed     b=B e=EH1 d=D
  red     r=R e=EH1 d=D
  bat     b=B a=AE1 t=T
  cat     c=K a=AE1 t=T
  hat     h=HH a=AE1 t=T
  hop     h=HH o=AA1 p=P
  leg     l=L e=EH1 g=G
  kit     k=K i=IH1 t=T
  his     h=HH i=IH1 s=Z
  is      i=IH1 s=Z
  hiss    h=HH i=IH1 ss=S
  hill    h=HH i=IH1 ll=L
  ball    b=B a=AO1 ll=L
  tall    t=T a=AO1 ll=L
  box     b=B o=AA1 x=K+S
  quit    qu=K+W i=IH1 t=T
  thin    th=TH i=IH1 n=N
  that    th=DH a=AE1 t=T
  this    th=DH i=IH1 s=S
  moon    m=M oo=UW1 n=N
  book    b=B oo=UH1 k=K
  soon    s=S oo=UW1 n=N
  took    t=T oo=UH1 k=K
  pink    p=P i=IH1 n=NG k=K
  tank    t=T a=AE1 n=NG k=K
  ring    r=R i=IH1 ng=NG
  king    k=K i=IH1 ng=NG
  stop    s=S t=T o=AA1 p=P
  spot    s=S p=P o=AA1 t=T
  jump    j=JH u=AH1 m=M p=P
  lunch   l=L u=AH1 n=N ch=CH
  hand    h=HH a=AE1 n=N d=D
  strap   s=S t=T r=R a=AE1 p=P
  next    n=N e=EH1 x=K+S t=T
  quilt   qu=K+W i=IH1 l=L t=T
  cake    c=K a_e=EY1 k=K
  bake    b=B a_e=EY1 k=K
  make    m=M a_e=EY1 k=K
  tame    t=T a_e=EY1 m=M
  night   n=N igh=AY1 t=T
  light   l=L igh=AY1 t=T
  rain    r=R ai=EY1 n=N
  said    s=S ai=EH1 d=D
  cry     c=K r=R y=AY1
  my      m=M y=AY1
  rabbit  r=R a=AE1 bb=B i=AH0 t=T / rab-bit
  kitten  k=K i=IH1 tt=T e=AH0 n=N / kit-ten
  sunset  s=S u=AH1 n=N s=S e=EH0 t=T / sun-set
  monster m=M o=AA1 n=N s=S t=T er=ER0 / mon-ster
  seven   s=S e=EH1 v=V e=AH0 n=N / sev-en
  sister  s=S i=IH1 s=S t=T er=ER0 / sis-ter
  open    o=OW1 p=P e=AH0 n=N / o-pen
  ago     a=AH0 g=G o=OW1 / a-go
  happy   h=HH a=AE1 pp=P y=IY0 / hap-py
  listen  l=L i=IH1 s=S t= e=AH0 n=N / lis-ten
  castle  c=K a=AE1 s=S t= le=AH0+L / cas-tle
  her     h=HH er=ER1
  fast    f=F a=AE1 s=S t=T
  read    r=R ea=IY1 d=D
  read    r=R ea=EH1 d=D
  bread   b=B r=R ea=EH1 d=D
  zib     z=Z i=IH1 b=B
  lock    l=L o=AA1 ck=K
  cats    c=K a=AE1 t=T s=S < cat + s
  dogs    d=D o=AO1 g=G s=Z < dog + s
  jumps   j=JH u=AH1 m=M p=P s=S < jump + s
  jumping j=JH u=AH1 m=M p=P i=IH0 ng=NG / jump-ing < jump + ing
  jumped  j=JH u=AH1 m=M p=P ed=T < jump + ed
  hopped  h=HH o=AA1 pp=P ed=T < hop + ed
  baking  b=B a=EY1 k=K i=IH0 ng=NG / bak-ing < bake + ing
  cried   c=K r=R i=AY1 ed=D < cry + ed
  boxes   b=B o=AA1 x=K+S es=AH0+Z / box-es < box + es
  dog's   d=D o=AO1 g=G s=Z < dog + 's
  rabbits r=R a=AE1 bb=B i=AH0 t=T s=S / rab-bits < rabbit + s
  unlock  u=AH0 n=N l=L o=AA1 ck=K / un-lock < lock + un
  jumper  j=JH u=AH1 m=M p=P er=ER0 / jump-er < jump + er
  jumpers j=JH u=AH1 m=M p=P er=ER0 s=Z / jump-ers < jumper + s
`;
