import { isVowel, type Stress } from './phoneme.ts';
import type { Part, Syllable } from './reading.ts';

/** Where a word is known to divide, as offsets of letters: between the halves of a compound, before an ending. */
export interface Seams {
  /** The first letters of a compound's second half, of a suffix, of what follows a prefix. */
  readonly inside?: readonly number[];
  /** The first letter of an ending that begins with a vowel (*jump|ing*), with whether the base's last letter is doubled. */
  readonly ending?: { readonly at: number; readonly doubled: boolean };
}

/**
 * Divides a word as dictionaries print it: consonant + le together, a doubled consonant split, two consonants parted
 * unless they can begin a syllable after a long vowel, one consonant kept with a short stressed vowel (*rob-in*) and
 * given to the next syllable otherwise (*o-pen*); compounds and endings at their seams. One syllable a vowel sound.
 * Common practice of American dictionaries, no source; checked in the tests over the words of grades 1 and 2.
 */
export function divide(word: string, parts: readonly Part[], seams: Seams = {}): readonly Syllable[] {
  const nuclei = parts.flatMap((part, index) => (part.sounds.some(isVowel) ? nucleiOf(part, index) : []));
  if (nuclei.length <= 1) return [{ text: word, stress: nuclei[0]?.stress ?? 0 }];
  const cuts = [0];
  for (let index = 1; index < nuclei.length; index++) {
    const left = nuclei[index - 1];
    const right = nuclei[index];
    if (left && right) cuts.push(cutBetween(word, parts, left, right, seams));
  }
  return nuclei.map(({ stress }, index) => ({ text: word.slice(cuts[index], cuts[index + 1]), stress }));
}

interface Nucleus {
  readonly part: number;
  readonly stress: Stress;
}

/** A part with two vowel sounds (`u` AH W … , letter names) makes two syllables. */
function nucleiOf(part: Part, index: number): readonly Nucleus[] {
  return part.sounds
    .filter((sound, place) => isVowel(sound) && !(sound === 'ER' && isVowel(part.sounds[place - 1] ?? 'B')))
    .map(() => ({ part: index, stress: part.stress ?? 0 }));
}

const shortVowels: ReadonlySet<string> = new Set(['AE', 'EH', 'IH', 'AA', 'AH', 'UH']);
const onsets: ReadonlySet<string> = new Set([
  'bl',
  'br',
  'cl',
  'cr',
  'dr',
  'fl',
  'fr',
  'gl',
  'gr',
  'pl',
  'pr',
  'tr',
  'thr',
  'shr',
  'chr',
  'sc',
  'sk',
  'sl',
  'sm',
  'sn',
  'sp',
  'st',
  'sw',
  'tw',
  'squ',
  'str',
  'spr',
  'scr',
  'spl',
  'phr',
  'gu',
  'su',
]);
/** The vowels that are short in teams too: *heav-y*, *cous-in*, *wood-en*, *leop-ard*. */
const shortTeamVowels: ReadonlySet<string> = new Set(['EH', 'AH', 'UH', 'IH', 'AE']);
/** Beginnings whose weak e stays open before s and a consonant: *be-stow*, *de-stroy*, *re-spect*. */
const openBeginnings: ReadonlySet<string> = new Set(['be', 'de', 're', 'pre']);

function cutBetween(
  word: string,
  parts: readonly Part[],
  left: Nucleus,
  right: Nucleus,
  seams: Seams,
): number {
  const leftPart = parts[left.part];
  const rightPart = parts[right.part];
  if (!leftPart || !rightPart) return 0;
  const from = endOf(leftPart);
  const to = startOf(rightPart);
  const { inside = [], ending } = seams;
  const seam = inside.find((at) => at > startOf(leftPart) && at <= to);
  if (seam !== undefined) return seam;
  if (ending && ending.at > startOf(leftPart) && ending.at <= to)
    return ending.doubled ? ending.at - 1 : ending.at;
  if (left.part === right.part) return from;
  const between = parts.slice(left.part + 1, right.part);
  const silent = between.findIndex((part) => part.sounds.length === 0 && /^[aeiouy]/.test(part.letters));
  if (silent > 0) return beforeSilentVowel(between, silent);
  const consonants = between.filter((part) => part.sounds.length > 0);
  const last = consonants[consonants.length - 1];
  const first = consonants[0];
  if (!first || !last) return afterVowelR(word, leftPart, to, inside);
  if (rightPart.letters === 'le' || (rightPart.letters === 'l' && rightPart.sounds[0] === 'AH'))
    return beforeLe(last);
  if (consonants.length === 1) {
    const before = parts[left.part - 1];
    const isTion = before !== undefined && isSoftened(before) && /^[ln]$/.test(first.letters);
    // op-er-ate, where er says AH R before a stressed vowel
    const isEr = leftPart.letters === 'e' && left.stress === 0 && first.letters === 'r';
    const isLater = parts.slice(0, left.part).some((part) => part.sounds.some(isVowel));
    if (isTion || (isEr && leftPart.sounds[0] === 'AH' && isLater)) return endOf(first);
    return aroundOne(first, leftPart, left, before);
  }
  const isOpenBeginning = left.stress === 0 && openBeginnings.has(word.slice(0, from));
  return aroundSeveral(consonants, leftPart, left, isOpenBeginning);
}

/** A silent vowel letter stands with what follows it (*ev-ery*); one consonant before it is kept, of more the last goes on. */
function beforeSilentVowel(between: readonly Part[], silent: number): number {
  const last = between[silent - 1];
  const mute = between[silent];
  if (!last || !mute) return 0;
  return silent > 1 ? startOf(last) : startOf(mute);
}

/** Vowel and r before a vowel: *hur-ry* and *sto-ry*, *he-ro*, *ju-ry*, *ru-ral*, but *par-ent*, *for-est*, *scar-y*. */
function afterVowelR(word: string, left: Part, to: number, inside: readonly number[]): number {
  if (left.letters.endsWith('rr')) return to - 1;
  const isOpen =
    (/^[ou]r$/.test(left.letters) &&
      (/^(y$|a$|ies$|ied$|i[aeou])/.test(word.slice(to)) || inside.includes(to + 1))) ||
    (left.letters === 'er' && left.sounds[0] !== 'ER') ||
    (/^[ae]?ur$/.test(left.letters) && /U|AO/.test(left.sounds.join(' ')));
  return isOpen ? to - 1 : to;
}

/** In *ta-ble* and *un-cle* the consonant goes with le; a doubled one parts (*lit-tle*), ck and st stay behind or part. */
function beforeLe(last: Part): number {
  const start = startOf(last);
  const end = endOf(last);
  if (last.letters === 'ck') return end;
  if (isDoubled(last.letters)) return start + 1;
  if (last.letters === 'st' || last.letters === 'sc') return start + 1;
  return start;
}

function aroundOne(consonant: Part, vowel: Part, nucleus: Nucleus, before: Part | undefined): number {
  const start = startOf(consonant);
  const end = endOf(consonant);
  const { letters } = consonant;
  if (isDoubled(letters)) return start + 1;
  if (
    letters === 'ck' ||
    letters === 'tch' ||
    letters === 'dge' ||
    letters === 'ng' ||
    letters === 'x' ||
    letters === 'dg'
  )
    return end;
  if (vowel.letters.includes('_e')) return end + 1;
  if (isSoftened(consonant)) return letters === 'ssi' || letters === 'xi' ? start + 1 : start;
  // trea-sure
  if (letters === 's' && consonant.sounds[0] === 'ZH') return start;
  if (parted.has(letters)) return start + 1;
  if (letters === 'sc') return nucleus.stress > 0 || vowel.letters === 'a' ? start + 1 : start;
  // qual-i-ty: a after w is a short o; fa-ther has a long one.
  const isShortA =
    vowel.letters === 'a' && vowel.sounds[0] === 'AA' && /^(qu|wh?)$/.test(before?.letters ?? '');
  return (isShort(vowel) || isShortA) && nucleus.stress > 0 ? end : start;
}

/** ti, ci, si, gi, ge before a vowel begin the next syllable (*na-tion*, *vi-sion*, *mis-sion*, *pi-geon*); that keeps its n or l (*na-tion-al*). */
function isSoftened({ letters, sounds }: Part): boolean {
  return /^(.+i|ge)$/.test(letters) && /^(SH|ZH|CH|JH|K SH)$/.test(sounds.join(' '));
}

/** Single sounds whose letters are parted: *lis-ten*, *of-ten*, *ex-cite*, *ex-haust*. */
const parted: ReadonlySet<string> = new Set(['st', 'ft', 'xc', 'xh']);

function isShort({ letters, sounds }: Part): boolean {
  const [sound = ''] = sounds;
  if (sounds.length !== 1) return false;
  if (letters.length > 1) return shortTeamVowels.has(sound);
  if (letters === 'o' && sound === 'AO') return true;
  return shortVowels.has(sound) && !(letters === 'a' && sound === 'AA');
}

function aroundSeveral(
  consonants: readonly Part[],
  vowel: Part,
  nucleus: Nucleus,
  isOpenBeginning: boolean,
): number {
  const isSplit = vowel.letters.includes('_e');
  const rest = isSplit ? consonants.slice(1) : consonants;
  const first = rest[0];
  if (!first) return 0;
  if (isSplit) return startOf(first);
  if (isDoubled(first.letters)) return startOf(first) + 1;
  const isShortO = vowel.letters === 'o' && vowel.sounds[0] === 'AO';
  const isOpen = !shortVowels.has(vowel.sounds[0] ?? '') && vowel.letters.length === 1 && !isShortO;
  const isWeak = nucleus.stress === 0 && vowel.letters.length === 1;
  // bur-glar, sur-prise, neu-tral: vowel and r, and long teams.
  const isTeam = vowel.letters.length > 1 && !isShort(vowel);
  const last = rest[rest.length - 1];
  if ((isOpen || endsInR(vowel)) && rest.length === 2 && last?.letters === 'i') return startOf(first);
  if (last?.letters === 'xi') return startOf(last) + 1;
  for (let kept = isOpen || isWeak || isTeam ? 0 : 1; kept < rest.length; kept++) {
    const onset = rest.slice(kept);
    const letters = onset.map((part) => part.letters).join('');
    if (
      onset.length === 1 ||
      (onsets.has(letters) && !(kept === 0 && letters.startsWith('s') && !isOpenBeginning && !endsInR(vowel)))
    ) {
      const start = startOf(onset[0] ?? first);
      return start;
    }
  }
  return startOf(rest[rest.length - 1] ?? first);
}

function endsInR({ sounds }: Part): boolean {
  const last = sounds[sounds.length - 1];
  return last === 'R' || last === 'ER';
}

function isDoubled(letters: string): boolean {
  return letters.length === 2 && letters[0] === letters[1];
}

function startOf(part: Part): number {
  return part.spans[0]?.[0] ?? 0;
}

/** The end of a part's first run of letters: a split grapheme's e does not count. */
function endOf(part: Part): number {
  return part.spans[0]?.[1] ?? 0;
}
