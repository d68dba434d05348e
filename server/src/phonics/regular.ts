import type { AlignedPart } from './align.ts';
import type { Phoneme } from './phoneme.ts';

/**
 * Reads a one-syllable word of regular shape as a first-grade reader would sound it out: consonants, one vowel spelling,
 * consonants, perhaps an s. `letters` in lower case. Undefined when the word has another shape, or a spelling that two
 * readings fit equally well (*ow* at the end, *oo* before d, *g* before e at the start); nothing is looked up in a lexicon.
 */
export function readRegular(letters: string): readonly AlignedPart[] | undefined {
  return readSyllable(letters) ?? readWithS(letters);
}

/** Consonant spellings that may begin a word, its graphemes apart. Before e, i and y, c says S and g is not regular. */
const onsets: ReadonlyMap<string, readonly string[]> = tableOf(`
  b c d f g h j k l m n p qu r s t v w y z sh ch th wh ph kn wr
  b-l b-r c-l c-r d-r d-w f-l f-r g-l g-r k-l k-r p-l p-r s-c s-k s-l s-m s-n s-p s-qu s-t s-w t-r t-w v-l z-l
  sh-r th-r ph-l ph-r s-c-r s-p-l s-p-r s-t-r`);

/** Consonant spellings that may follow the vowel. */
const codas: ReadonlyMap<string, readonly string[]> = tableOf(`
  b c d f g k l m n p s t v x z ff ll ss zz bb dd gg mm nn pp tt ck tch dge sh ch th ng mb
  n-k n-d n-t n-ch n-ce n-se n-ge n-th n-x m-p m-ph f-t c-t p-t s-k s-p s-t x-t
  l-b l-d l-f l-k l-m l-n l-p l-t l-ch l-th l-ge l-se l-ve p-se n-c-t m-p-t m-f x-th f-th p-th
  ve ce ze se ge`);

/** What a consonant grapheme says; the context adds NG for n before k and c, and S for c before e, i and y. */
const consonants: Readonly<Record<string, readonly Phoneme[]>> = {
  ...single('b d f g h j k l m n p r s t v w y z', 'B D F G HH JH K L M N P R S T V W Y Z'),
  ...single('bb dd ff gg ll mm nn pp ss tt zz', 'B D F G L M N P S T Z'),
  ...single('c sh ch th wh ph kn wr ck tch dge ng mb', 'K SH CH TH W F N R K CH JH NG M'),
  ...single('ve ce ze ge', 'V S Z JH'),
  se: ['S'],
  qu: ['K', 'W'],
  x: ['K', 'S'],
};

interface VowelRule {
  /** The vowel's letters; a split grapheme has its low line. */
  readonly letters: string;
  /** The letters after the vowel; for a split grapheme, those between it and the e. */
  readonly coda: RegExp;
  /** The letters before the vowel, where they matter. */
  readonly onset?: RegExp;
  /** Empty when no reading is the regular one. */
  readonly sounds: readonly Phoneme[];
}

/**
 * The vowel spellings, the first that fits counts: letters, coda, sounds, and onset where it matters. A coda or onset
 * is an expression over the whole run of consonant letters, `-` none; the sound `?` says that no reading is the regular one.
 */
const vowelRules: readonly VowelRule[] = `
igh   t?  AY
eigh  t?  EY
air   -  EH-R
are   -  EH-R
ire   -  AY-ER
ore   -  AO-R
ure   -  Y-UH-R  .*[cpmfb]
ure   -  UH-R
ere   -  ?
eer   -  IH-R
ear   -  IH-R
oar   [dsk]?  AO-R
oor   -  AO-R
aw    [nlk]?  AO
ay    -  EY
oy    -  OY
ew    -  UW  .*[rljdtsn]|.*ch
ew    -  Y-UW
ue    -  UW  .*[rljdtsn]
ue    -  Y-UW
ie    -  AY
oe    -  OW
ie    ld|f|ve|ce|ge  IY
ai    (?!se).+  EY
ee    (?!se).*  IY
ea    d|th|lth|lt|lm|nt|nse  ?
ea    (?!se).*  IY
oa    (?!se).+  OW
oi    (?!se).+  OY
oo    k  UH
oo    d|se|th  ?
oo    .*  UW
ou    nd|t|d|ch|nt|nce|ns|se|th  AW
ow    d|l  AW
au    (?!se|gh).+  AO
ui    t|ce  UW  .*[rljs]
ar    [dkmnptlbf]|sh|ch|ge|ce|ve|th  AO-R  wh?|sw|dw|qu
ar    [dkmnptlbf]?|sh|ch|ge|ce|ve|th|se  AA-R
or    .*  ?  wh?
or    [dkmnptbf]?|ch|th|ce|ge|se  AO-R
er    [bdfgkmnpt]?|ch|th|ge|ve|se|ce  ER
ir    [bdfkmlpt]?|ch|th|st|ge|ve|l[sd]  ER
ur    [bdfkmlpnt]?|ch|st|ge|ve|se|ce  ER
a_e   [bcdfgklmnptvz]|s|th|st  EY
i_e   [bcdfklmnptvz]|s|th  AY
y_e   [dklmnpt]  AY
o_e   [bcdgklmnptvz]|s|st  OW
u_e   [bdgklmnptzs]  Y-UW  .*[bcfhmkvp]|
u_e   [bdgklmnptzscf]  UW
e_e   [cklmnptvds]  IY
al    k  AO
a     ll|lt  AO
a     l[dfmvs].*|nge  ?
a     (?!g$|m$|x$|ck$|ng$).+  ?  wh?|sw|tw|squ|qu
i     nd|ld|nth  ?
o     l[dt]  OW
o     ll?|l[kmf].*|st|mb|th|nce  ?
i     mb  ?
o     ng  AO
e     v  ?
o     v  ?
u     v|ll|sh|tch  ?  f|b|p
o     ve  ?
a     ve|se|ze|ge|ce  ?
e     ve|se|ze|ge|ce  ?
i     ve|se|ze|ge|ce  ?
u     ve|se|ze|ge|ce  ?
o     se|ze|ge|ce  ?
a     .+  AE
e     .+  EH
i     .+  IH
o     .+  AA
u     .+  AH
y     [mnpdtlkx]|th|mph|st|nx|nk|nd|ss|ll  IH
e     -  IY  .+
i     -  AY  .+
o     -  OW  .+
y     -  AY  .+
a     -  AA  .+
u     -  UW  .+
`
  .trim()
  .split('\n')
  .map(ruleOf);

function readSyllable(letters: string): readonly AlignedPart[] | undefined {
  for (let length = Math.min(4, letters.length - 1); length >= 0; length--) {
    const onset = letters.slice(0, length);
    const before = length === 0 ? [] : onsets.get(onset);
    if (before === undefined) continue;
    const rime = readRime(onset, letters.slice(length));
    if (rime === undefined) continue;
    const first = onsetParts(before, rime[0]?.letters[0] ?? '');
    return first === undefined ? undefined : [...first, ...rime];
  }
  return undefined;
}

/** A word that takes an s: *swigs*, *bakes*; not one whose s is its own (*bus*) or would need a vowel (*boxes*). */
function readWithS(letters: string): readonly AlignedPart[] | undefined {
  if (!letters.endsWith('s')) return undefined;
  const stem = letters.slice(0, -1);
  if (/[aeiouy]$/.test(stem) && !/[^aeiou]e$/.test(stem) && !/([aeo]y|ee|ea|oe|ie|ue)$/.test(stem))
    return undefined;
  if (/[^aeiouy]e$/.test(stem) && !/[aeiouy][^aeiouy]{1,2}e$/.test(stem)) return undefined;
  const parts = readSyllable(stem);
  const last = parts?.at(-1)?.sounds.at(-1);
  if (parts === undefined || last === undefined || sibilants.has(last)) return undefined;
  return [...parts, { letters: 's', sounds: [voiceless.has(last) ? 'S' : 'Z'] }];
}

const sibilants: ReadonlySet<Phoneme> = new Set<Phoneme>(['S', 'Z', 'SH', 'CH', 'JH']);
const voiceless: ReadonlySet<Phoneme> = new Set<Phoneme>(['P', 'T', 'K', 'F', 'TH']);

function readRime(onset: string, rest: string): readonly AlignedPart[] | undefined {
  for (const rule of vowelRules) {
    const isSplit = rule.letters.endsWith('_e');
    const vowel = isSplit ? rule.letters.slice(0, -2) : rule.letters;
    if (!rest.startsWith(vowel) || (isSplit && !rest.endsWith('e'))) continue;
    const coda = rest.slice(vowel.length, isSplit ? -1 : undefined);
    if (isSplit && coda === '') continue;
    if (!rule.coda.test(coda) || (rule.onset && !rule.onset.test(onset))) continue;
    if (coda !== '' && !isSplit && !codas.has(coda)) continue;
    if (onset === '' && coda === '') return undefined;
    if (rule.sounds.length === 0) return undefined;
    const parts: AlignedPart[] = [{ letters: rule.letters, sounds: rule.sounds, stress: 1 }];
    return [...parts, ...(isSplit ? splitParts(vowel, coda) : codaParts(coda))];
  }
  return undefined;
}

function onsetParts(graphemes: readonly string[], next: string): readonly AlignedPart[] | undefined {
  const isFront = 'eiy'.includes(next);
  const last = graphemes.at(-1);
  if (isFront && last === 'g') return undefined;
  if (isFront && graphemes.join('') === 'sc') return [{ letters: 'sc', sounds: ['S'] }];
  return graphemes.map((letters) => ({
    letters,
    sounds: isFront && letters === 'c' && letters === last ? ['S'] : (consonants[letters] ?? []),
  }));
}

function codaParts(coda: string): readonly AlignedPart[] {
  const graphemes = codas.get(coda) ?? [];
  return graphemes.map((letters, index) => {
    const next = graphemes[index + 1];
    const isNasal = letters === 'n' && (next === 'k' || next === 'c' || next === 'x');
    return { letters, sounds: isNasal ? ['NG'] : (consonants[letters] ?? []) };
  });
}

/** The consonants between a split vowel and its e: c and g are soft, th is voiced, s says Z but after a. */
function splitParts(vowel: string, coda: string): readonly AlignedPart[] {
  switch (coda) {
    case 'c':
      return [{ letters: 'c', sounds: ['S'] }];
    case 'g':
      return [{ letters: 'g', sounds: ['JH'] }];
    case 's':
      return [{ letters: 's', sounds: [vowel === 'a' ? 'S' : 'Z'] }];
    case 'th':
      return [{ letters: 'th', sounds: ['DH'] }];
    case 'st':
      return [
        { letters: 's', sounds: ['S'] },
        { letters: 't', sounds: ['T'] },
      ];
    default:
      return [{ letters: coda, sounds: consonants[coda] ?? [] }];
  }
}

function tableOf(text: string): ReadonlyMap<string, readonly string[]> {
  const items = text.trim().split(/\s+/);
  return new Map(items.map((item) => [item.replaceAll('-', ''), item.split('-')]));
}

function single(graphemes: string, sounds: string): Record<string, readonly Phoneme[]> {
  const list = sounds.split(' ') as Phoneme[];
  return Object.fromEntries(
    graphemes.split(' ').map((letters, index) => [letters, list.slice(index, index + 1)]),
  );
}

function ruleOf(line: string): VowelRule {
  const [letters = '', coda = '', sounds = '', onset = ''] = line.split(/\s+/);
  const rule = {
    letters,
    coda: new RegExp(`^(?:${coda === '-' ? '' : coda})$`),
    sounds: sounds === '?' ? [] : (sounds.split('-') as Phoneme[]),
  };
  return onset === '' ? rule : { ...rule, onset: new RegExp(`^(?:${onset})$`) };
}
