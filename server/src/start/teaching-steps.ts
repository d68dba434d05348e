/** A small step of teaching: what belongs together and opens enough words by itself. */
export interface TeachingStep {
  readonly title: string;
  /** Each as `ai as in rain`. */
  readonly spellings?: readonly string[];
  readonly blends?: readonly string[];
  readonly endings?: readonly string[];
  readonly syllables?: number;
  readonly punctuation?: readonly string[];
}

/** The short vowels by their letters. */
export const shortVowels: Readonly<Record<string, string>> = {
  a: 'a as in map',
  e: 'e as in bed',
  i: 'i as in pin',
  o: 'o as in mop',
  u: 'u as in tub',
};

/** The orders of the short vowels. */
export const vowelOrders = {
  apart: ['a', 'o', 'i', 'u', 'e'],
  usual: ['a', 'i', 'o', 'u', 'e'],
  alphabet: ['a', 'e', 'i', 'o', 'u'],
} as const;

/**
 * The orders of the consonants: a row for each vowel, whose consonants are taught with it. In both, d
 * comes long before b, with which it is mixed up most.
 */
export const consonantOrders = {
  'many-words': [
    ['t as in top', 'm as in mud', 'p as in pan', 's as in sun', 'n as in nap'],
    ['c as in cat', 'd as in dot'],
    ['g as in gap', 'h as in hat'],
    ['l as in log', 'f as in fan'],
    ['b as in bat', 'r as in rug'],
  ],
  'held-first': [
    ['m as in mud', 's as in sun', 'n as in nap', 'f as in fan', 't as in top', 'r as in rug'],
    ['l as in log', 'p as in pan'],
    ['d as in dot', 'h as in hat'],
    ['c as in cat', 'g as in gap'],
    ['b as in bat'],
  ],
} as const;

/** The letters that are left when the vowels are taught. */
export const lastLetters: readonly TeachingStep[] = [
  { title: 'k, ck and w', spellings: ['k as in kit', 'ck as in duck', 'w as in wig'], punctuation: ['"'] },
  { title: 'j, v and y', spellings: ['j as in jam', 'v as in vet', 'y as in yes'] },
  { title: 'Doubled letters at the end', spellings: ['ll as in hill', 'ss as in miss', 'ff as in puff'] },
  {
    title: 'x, z, zz and qu',
    spellings: ['x as in box', 'z as in zip', 'zz as in buzz', 'qu as in quit'],
  },
];

/** Two letters for one sound. */
export const digraphs: readonly TeachingStep[] = [
  { title: 'sh', spellings: ['sh as in ship'] },
  { title: 'th and wh', spellings: ['th as in this', 'th as in thin', 'wh as in when'] },
  { title: 'ch and tch', spellings: ['ch as in chin', 'tch as in catch'] },
  { title: 'ng', spellings: ['ng as in song'] },
];

/** Consonants side by side; `nk` is two sounds, so it is one of them. */
export const blendSteps: readonly TeachingStep[] = [
  { title: 'Two consonants at the end, and nk', spellings: ['nk as in pink'], blends: ['end'] },
  { title: 'Two consonants at the start', blends: ['start'] },
  { title: 'Three consonants in a row', blends: ['three'] },
];

/** Endings of short words. */
export const firstEndings: readonly TeachingStep[] = [
  { title: 'The endings s and es', endings: ['s', "'s", 'es'] },
  { title: 'The endings ing and ed', endings: ['ing', 'ed'] },
];

/** From the e at the end to the vowels with r. */
export const longVowels: readonly TeachingStep[] = [
  { title: 'Final e with a and i', spellings: ['a_e as in cake', 'i_e as in bike'] },
  {
    title: 'Final e with o, u and e, and the s of nose',
    spellings: ['o_e as in hope', 'u_e as in cube', 'u_e as in rule', 'e_e as in these', 's as in nose'],
  },
  {
    title: 'Soft c and g, and a final e that only sits there',
    spellings: [
      'c as in city',
      'g as in gem',
      'ce as in dance',
      'ge as in hinge',
      'dge as in bridge',
      've as in have',
      'se as in mouse',
    ],
  },
  {
    title: 'ee and ea',
    spellings: ['ee as in feet', 'ea as in seat', 'e as in me', 'se as in cheese'],
    endings: ["n't"],
  },
  { title: 'ai and ay', spellings: ['ai as in rain', 'ay as in day'] },
  {
    title: 'oa, ow as in snow, and o by itself',
    spellings: ['oa as in boat', 'ow as in snow', 'o as in go'],
  },
  {
    title: 'igh, and y at the end of a short word',
    spellings: ['igh as in light', 'y as in my', 'ie as in pie'],
  },
];

/** Words of two syllables. */
export const longerWords: TeachingStep = {
  title: 'Doubled letters in the middle, le, and y at the end of a long word',
  syllables: 2,
  spellings: [
    'bb as in rabbit',
    'dd as in ladder',
    'gg as in egg',
    'mm as in hammer',
    'nn as in dinner',
    'pp as in puppet',
    'rr as in carrot',
    'tt as in kitten',
    'le as in little',
    'y as in happy',
  ],
};

/** Vowels with r, vowels that glide, letters that keep quiet. */
export const laterSpellings: readonly TeachingStep[] = [
  { title: 'ar, or and ore', spellings: ['ar as in car', 'or as in fork', 'ore as in more'] },
  {
    title: 'er, ir and ur',
    spellings: ['er as in her', 'ir as in bird', 'ur as in fur'],
    endings: ['er', 'est'],
  },
  { title: 'The two sounds of oo', spellings: ['oo as in moon', 'oo as in book'] },
  { title: 'ou, and ow as in cow', spellings: ['ou as in loud', 'ow as in cow'] },
  { title: 'oi and oy', spellings: ['oi as in coin', 'oy as in toy'] },
  {
    title: 'aw, au, all and al',
    spellings: ['aw as in paw', 'au as in haul', 'all as in ball', 'al as in talk'],
  },
  { title: 'ew and ue', spellings: ['ew as in chew', 'ew as in few', 'ue as in blue'] },
  {
    title: 'kn, wr and mb',
    spellings: ['kn as in knee', 'wr as in wrap', 'mb as in lamb'],
    endings: ['y', 'ly'],
  },
  {
    title: 'air, are, ear and eer',
    spellings: ['air as in hair', 'are as in care', 'ear as in near', 'eer as in deer'],
  },
  { title: 'ea as in bread, and ph', spellings: ['ea as in bread', 'ph as in phone'] },
  {
    title: 'A vowel that ends its syllable',
    spellings: ['a as in baby', 'i as in tiger', 'u as in music', 'u as in tulip'],
  },
  { title: 'Words of three syllables', syllables: 3, endings: ['ful', 'less', 'ness', 'un', 're'] },
];

/** Words to teach whole, in the order in which stories need them. */
export const highFrequencyWords: readonly string[] = `
  the a I is to and was of you he she said for are they my have do we me be go no so what come some who two there were
  from one does want put your give live where here his has her people been says again into both don't could would should
  very every any many work word water other once mother through our love above because eyes friend move laugh enough pretty
  sure four only thought nothing
`
  .trim()
  .split(/\s+/);
