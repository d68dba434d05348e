import { describe, expect, it } from 'vitest';
import { cut, phonics, reads, said } from '../../support/reads.ts';

// How a word is cut into graphemes: common practice of early-reading teaching, no published source.
describe('words are cut as a first-grade teacher writes them in sound boxes', () => {
  const conventions: Readonly<Record<string, string>> = {
    'a doubled consonant is one grapheme': 'h-i-ll p-u-pp-y e-gg r-a-bb-i-t m-i-tt-e-n c-a-rr-y',
    'a consonant digraph or trigraph is one':
      'sh-i-p d-u-ck c-a-tch b-r-i-dge wh-e-n ph-o_e-n s-o-ng th-i-n ch-i-p',
    'consonants of a blend stay apart':
      's-t-o-p j-u-m-p s-t-r-i-ng sh-r-i-m-p s-p-l-a-sh l-u-n-ch m-i-l-k n-e-x-t',
    'n says NG before k': 'b-a-n-k p-i-n-k',
    'x and qu are one grapheme of two sounds': 'b-o-x qu-i-t f-o-x qu-ee-n',
    'a silent letter of a fixed pair belongs to its neighbour':
      'kn-ee wr-a-p gn-a-t l-a-mb kn-o-ck wr-i_e-t th-u-mb',
    'a vowel team is one': 'r-ai-n n-igh-t b-oa-t m-oo-n eigh-t s-ee d-ay ou-t c-oi-n s-aw f-ew b-l-ue',
    'a vowel, a consonant and e split the grapheme':
      'c-a_e-k th-e_e-s f-a_e-c p-a_e-g c-o_e-m h-o_e-m t-i_e-m c-u_e-t s-o_e-m',
    'a final e that lengthens nothing goes with the consonant':
      'h-a-ve h-ou-se d-a-n-ce l-ar-ge g-i-ve l-ea-ve n-ur-se f-e-n-ce ch-ee-se',
    'a vowel and r are one grapheme':
      'c-ar h-er b-ir-d f-or h-air n-ear c-are m-ore f-ire t-ur-n d-oor f-our',
    'consonant + le has le': 'l-i-tt-le t-a-b-le a-pp-le u-n-c-le p-u-zz-le',
    'the endings ed and es are one grapheme': 'j-u-m-p-ed p-l-ay-ed r-e-s-t-ed b-o-x-es d-i-sh-es',
    'the endings s, ing, er, est stand as their letters': 'd-o-g-s f-i-sh-i-ng f-a-s-t-er f-a-s-t-e-s-t',
    'after a dropped e or a doubled letter the letters stay that are there':
      'b-a-k-i-ng h-o-pp-ed c-r-i-ed s-m-i-l-ed r-u-nn-i-ng',
    'y and single vowels go by their sound': 'm-y h-a-pp-y g-o o-p-e-n b-a-b-y w-e',
    'a reduced vowel keeps its letter': 'r-a-bb-i-t k-i-tch-e-n s-e-v-e-n s-o-f-a',
    'odd words are cut the same way': 's-ai-d w-a-s t-wo p-eo-p-le f-r-ie-n-d o_e-n d-oe-s wh-o s-ch-oo-l',
    'ti, ci, si as sh and zh are one': 'n-a-ti-o-n s-p-e-ci-a-l v-i-si-o-n',
  };
  for (const [convention, cuts] of Object.entries(conventions)) {
    it(convention, () => {
      for (const graphemes of cuts.split(' ')) reads(wordOf(graphemes)).as(graphemes);
    });
  }

  it('says the sounds of each grapheme', () => {
    reads('box').as('b-o-x', 'B AA K S');
    reads('quit').as('qu-i-t', 'K W IH T');
    reads('bank').as('b-a-n-k', 'B AE NG K');
    reads('cannot').as('c-a-n-n-o-t', 'K AE N N AA T');
    reads('roommate').as('r-oo-m-m-a_e-t', 'R UW M M EY T');
    reads('shepherd').as('sh-e-p-h-er-d', 'SH EH P 0 ER D');
    reads('little').as('l-i-tt-le', 'L IH T AH L');
    reads('jumped').as('j-u-m-p-ed', 'JH AH M P T');
    reads('played').as('p-l-ay-ed', 'P L EY D');
    reads('rested').as('r-e-s-t-ed', 'R EH S T AH D');
    reads('boxes').as('b-o-x-es', 'B AA K S AH Z');
    reads('dogs').as('d-o-g-s', said(phonics.readingsOf('dogs')[0]));
    reads('face').as('f-a_e-c', 'F EY S');
    reads('page').as('p-a_e-g', 'P EY JH');
    reads('open').as('o-p-e-n', 'OW P AH N');
    reads('around').as('a-r-ou-n-d', 'AH R AW N D');
    reads('hour').as('h-our', '0 AW ER');
  });

  it('gives every spelling the place of its letters', () => {
    expect(phonics.readingsOf('cake')[0]?.parts).toEqual([
      { letters: 'c', sounds: ['K'], spans: [[0, 1]] },
      {
        letters: 'a_e',
        sounds: ['EY'],
        spans: [
          [1, 2],
          [3, 4],
        ],
        stress: 1,
      },
      { letters: 'k', sounds: ['K'], spans: [[2, 3]] },
    ]);
    expect(phonics.readingsOf('Kim’s')[0]?.parts.map((part) => part.spans)).toEqual([
      [[0, 1]],
      [[1, 2]],
      [[2, 3]],
      [[3, 5]],
    ]);
    expect(cut(phonics.readingsOf('CAFÉ')[0])).toBe('c-a-f-e');
  });
});

describe('endings are found in the structure and not in the letters', () => {
  it.each([
    ['fishing', 'fish', 'ing'],
    ['hopped', 'hop', 'ed'],
    ['baking', 'bake', 'ing'],
    ['cried', 'cry', 'ed'],
    ['boxes', 'box', 'es'],
    ['horses', 'horse', 'es'],
    ['puppies', 'puppy', 'es'],
    ['leaves', 'leaf', 'es'],
    ['halves', 'half', 'es'],
    ['wolves', 'wolf', 'es'],
    ['knives', 'knife', 's'],
    ['moves', 'move', 's'],
    ['doses', 'dose', 'es'],
    ['buses', 'bus', 'es'],
    ['skilled', 'skill', 'ed'],
    ['admired', 'admire', 'ed'],
    ['hurriedly', 'hurried', 'ly'],
    ['knives', 'knife', 's'],
    ['faster', 'fast', 'er'],
    ['biggest', 'big', 'est'],
    ['happier', 'happy', 'er'],
    ['sunny', 'sun', 'y'],
    ['quickly', 'quick', 'ly'],
    ['gently', 'gentle', 'ly'],
    ["Kim's", 'kim', "'s"],
    ["isn't", 'is', "n't"],
    ["can't", 'can', "n't"],
    ["don't", 'do', "n't"],
    ["won't", 'wo', "n't"],
    ["ain't", 'ai', "n't"],
    ['funny', 'fun', 'y'],
    ['crunchy', 'crunch', 'y'],
    ["we'll", 'we', "'ll"],
    ['longer', 'long', 'er'],
    ['clomps', 'clomp', 's'],
  ])('%s is %s and %s', (word, base, ending) => reads(word).madeOf(base, ending));

  it.each(
    'king ring sing thing bring morning ceiling bed red seed feed need butter summer letter dinner corner flower forest honest happy silly puppy early only family this is his was bus gas news'.split(
      ' ',
    ),
  )('%s has no ending', (word) => expect(phonics.readingsOf(word)[0]?.inflection).toBeUndefined());
});

describe('words divide as dictionaries print them', () => {
  // Common practice of American dictionaries, no source: division by hand.
  it.each(
    'rab-bit lit-tle ta-ble ap-ple pup-py hap-py ba-by rob-in o-pen ti-ger mu-sic lem-on chil-dren mon-ster hun-dred pump-kin sun-set bas-ket sis-ter kit-ten win-ter jump-ing hop-ping rest-ed box-es fast-er pic-nic sev-en riv-er wa-ter pa-per ze-bra se-cret ze-ro sto-ry hur-ry car-rot pen-cil gar-den a-bout a-round be-gin nap-kin mit-ten pil-low yel-low win-dow de-cide ev-ery chick-en pock-et kitch-en rain-bow bath-tub cup-cake pan-cake base-ball some-thing un-der af-ter o-ver nev-er ev-er num-ber sum-mer din-ner let-ter lad-der flow-er tow-er'.split(
      ' ',
    ),
  )('%s', (division) => reads(division.replaceAll('-', '')).divided(division));

  it('counts one syllable a vowel', () => {
    reads('cake').divided('cake');
    reads('fire').divided('fire');
    reads('strength').divided('strength');
    reads('banana').divided('ba-nan-a');
    reads('elephant').divided('el-e-phant');
  });
});

describe('words the dictionary lacks are read from words it has', () => {
  it('with an ending', () => {
    reads('swigs').as('s-w-i-g-s', 'S W IH G Z');
    reads('swigs').from('ending');
    reads('clomping').as('c-l-o-m-p-i-ng', 'K L AA M P IH NG');
    reads("Zib's").as("z-i-b-'s");
  });
  it('as a compound', () => {
    reads('pinecone').as('p-i_e-n-c-o_e-n', 'P AY N K OW N');
    reads('pinecone').from('compound');
    reads('sandcastle').divided('sand-cas-tle');
  });
  it('behind un and re', () => {
    reads('unbox').as('u-n-b-o-x');
    reads('rehop').as('r-e-h-o-p');
  });
  it('and anything else gets a reading all the same', () => {
    for (const word of ['zqx', 'Plim', 'aaaaa', 'x', "o'", 'Ünal', 'brrrrr']) {
      expect(phonics.readingsOf(word).length, word).toBeGreaterThan(0);
      expect(phonics.readingsOf(word)[0]?.syllables.length, word).toBeGreaterThan(0);
    }
    expect(phonics.readingsOf('123')).toEqual([]);
  });
});

function wordOf(graphemes: string): string {
  const parts = graphemes.split('-');
  const split = parts.findIndex((part) => part.endsWith('_e'));
  if (split < 0) return parts.join('');
  const rest = parts.slice(split + 1);
  return [...parts.slice(0, split), parts[split]?.replace('_e', ''), rest[0], 'e', ...rest.slice(1)].join('');
}
