import { partOfSpeech } from '../src/phonics/lexicon.ts';

const { adjective, adverb, noun, verb } = partOfSpeech;
const anyPart = adjective | adverb | noun | verb;

/** A prefix or suffix at whose border a word is cut and divided. */
export interface Affix {
  readonly letters: string;
  /** What it may sound like, phonemes without stress. */
  readonly sounds: readonly string[];
  /** The parts of speech of words that take it. */
  readonly of: number;
  /** How many letters the word has at least. */
  readonly shortest: number;
  /** Whether a word may double a letter or drop its e before it. */
  readonly changes?: boolean;
}

/** Suffixes of English words, the longest first. Common knowledge of word building, no source. */
export const suffixes: readonly Affix[] = [
  { letters: 'wards', sounds: ['W ER D Z'], of: anyPart, shortest: 3 },
  { letters: 'ness', sounds: ['N AH S', 'N IH S'], of: anyPart, shortest: 3 },
  { letters: 'less', sounds: ['L AH S', 'L IH S', 'L EH S'], of: noun | verb, shortest: 3 },
  { letters: 'ment', sounds: ['M AH N T'], of: verb | adjective, shortest: 3 },
  { letters: 'ship', sounds: ['SH IH P'], of: anyPart, shortest: 3 },
  { letters: 'hood', sounds: ['HH UH D'], of: anyPart, shortest: 3 },
  { letters: 'ward', sounds: ['W ER D'], of: anyPart, shortest: 3 },
  { letters: 'some', sounds: ['S AH M'], of: anyPart, shortest: 3 },
  { letters: 'land', sounds: ['L AH N D', 'L AE N D'], of: anyPart, shortest: 3 },
  { letters: 'man', sounds: ['M AH N', 'M AE N'], of: anyPart, shortest: 3 },
  { letters: 'men', sounds: ['M AH N', 'M EH N', 'M IH N'], of: anyPart, shortest: 3 },
  { letters: 'ful', sounds: ['F AH L', 'F UH L'], of: noun | verb, shortest: 3 },
  { letters: 'let', sounds: ['L AH T', 'L IH T'], of: noun, shortest: 3 },
  { letters: 'able', sounds: ['AH B AH L'], of: verb | noun, shortest: 4, changes: true },
  { letters: 'ern', sounds: ['ER N'], of: noun, shortest: 4 },
  { letters: 'dom', sounds: ['D AH M'], of: noun | adjective, shortest: 3 },
  { letters: 'ish', sounds: ['IH SH'], of: noun | adjective, shortest: 3, changes: true },
  { letters: 'ty', sounds: ['T IY'], of: adjective, shortest: 4 },
  { letters: 'ly', sounds: ['L IY'], of: anyPart, shortest: 4 },
  { letters: 'en', sounds: ['AH N'], of: adjective | verb | noun, shortest: 4, changes: true },
  { letters: 'ie', sounds: ['IY'], of: noun | adjective, shortest: 4 },
  { letters: 'er', sounds: ['ER'], of: noun, shortest: 6 },
];

/** Prefixes of English words. `of` is not asked of what follows, which only has to be a word with a stress. */
export const prefixes: readonly Affix[] = [
  { letters: 'under', sounds: ['AH N D ER'], of: anyPart, shortest: 3 },
  { letters: 'fore', sounds: ['F AO R'], of: anyPart, shortest: 2 },
  { letters: 'over', sounds: ['OW V ER'], of: anyPart, shortest: 3 },
  { letters: 'dis', sounds: ['D IH S'], of: anyPart, shortest: 4 },
  { letters: 'mis', sounds: ['M IH S'], of: anyPart, shortest: 3 },
  { letters: 'non', sounds: ['N AA N'], of: anyPart, shortest: 4 },
  { letters: 'out', sounds: ['AW T'], of: anyPart, shortest: 3 },
  { letters: 'pre', sounds: ['P R IY'], of: anyPart, shortest: 4 },
  { letters: 'un', sounds: ['AH N'], of: anyPart, shortest: 3 },
  { letters: 're', sounds: ['R IY'], of: anyPart, shortest: 3 },
  { letters: 'be', sounds: ['B IH', 'B IY'], of: anyPart, shortest: 4 },
  { letters: 'a', sounds: ['AH'], of: anyPart, shortest: 4 },
];

/** Words that other words begin or end with by chance: *imp-art*, *carp-enter*, *liquid-ate*, *elect-rode*. */
export const notFirstHalves: ReadonlySet<string> = new Set(['imp', 'inn', 'carp', 'cent', 'mist', 'temp']);
export const notSecondHalves: ReadonlySet<string> = new Set(['ate', 'rode', 'elope']);

/** Compounds that are too short for the rule to be sure of them. */
export const shortCompounds: ReadonlySet<string> = new Set(['into', 'onto', 'upon']);

/** Words of two or three letters that begin compounds whether or not they keep a stress: *itself*, *instead*, *upset*. */
export const shortFirstHalves: ReadonlySet<string> = new Set([
  'with',
  'it',
  'in',
  'on',
  'up',
  'by',
  'my',
  'him',
  'her',
  'our',
]);
