import { inflect } from '../phonics/inflection.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Ending } from '../phonics/reading.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { FormName, WordForm } from './irregular-forms.ts';
import { pluralNouns } from './small-words.ts';
import type { Thesaurus } from './thesaurus.ts';
import { type PartOfSpeech, partsOfSpeech } from './thesaurus-format.ts';

/** A way to take a word apart, with how likely it is, 0 to 1; the ways of one word need not add up to 1. */
export interface LikelyForm extends WordForm {
  readonly likelihood: number;
}

/**
 * What a word (any capitals, without a possessive ending) may be a form of, the likeliest first: *left* is the past of
 * *leave* and an adjective of its own. Only common words are known.
 */
export function formsOf(word: string, thesaurus: Thesaurus, phonics: Phonics): readonly LikelyForm[] {
  const folded = foldedWord(word);
  const found: LikelyForm[] = [];
  const add = (form: WordForm, factor: number): void => {
    const share = thesaurus.sharesOf(form.base)?.[form.part] ?? 0;
    const known = found.some(
      (each) => each.base === form.base && each.part === form.part && each.form === form.form,
    );
    if (share > 0 && !known) found.push({ ...form, likelihood: share * factor });
  };
  const irregular = thesaurus.irregular.formsOf(folded);
  for (const form of irregular) add(form, 1);
  for (const reading of phonics.readingsOf(folded)) {
    if (reading.inflection === undefined) continue;
    const { ending, base } = reading.inflection;
    for (const form of formsWith(ending)) {
      const given = thesaurus.irregular.wordsFor(base, form.part, form.form);
      if (given === undefined || given.includes(folded)) add({ base, ...form }, 1);
    }
  }
  const isCompared = found.some(({ form }) => form === 'er' || form === 'est');
  for (const part of partsOfSpeech) {
    // WordNet lists *larger* by itself too.
    if (isCompared && (part === 'adjective' || part === 'adverb')) continue;
    // WordNet has the chased for whoever is; the noun is rare beside the verb.
    const isPast = part === 'noun' && found.some(({ form }) => form === 'past');
    const isForm = isPast || found.some((each) => each.base !== folded && each.part === part);
    // Saw is far more often the past of see than a tool.
    add(
      { base: folded, part, form: 'base' },
      isForm || irregular.some(({ base }) => base !== folded) ? 0.3 : 1,
    );
  }
  return found.sort((one, other) => other.likelihood - one.likelihood);
}

/**
 * A base in a form: *hop* past *hopped*, *child* plural *children*; the commonest way first. Empty when it has no such form
 * or it is in no word list. `er` and `est` are made by an ending or not at all: *more careful* is two words.
 */
export function wordsInForm(
  base: string,
  part: PartOfSpeech,
  form: FormName,
  thesaurus: Thesaurus,
  phonics: Phonics,
): readonly string[] {
  if (form === 'base') return [base];
  if (form === 'plural' && isPluralNoun(base, phonics)) return [base];
  const irregular = thesaurus.irregular.wordsFor(base, part, form);
  if (irregular !== undefined) return irregular;
  if (part === 'adjective' && form !== 'er' && form !== 'est') return [];
  const ending = endingOf(form);
  const made = ending === undefined ? [] : spellingsWith(base, ending);
  return made.filter((word) => isFormOf(word, base, ending, phonics)).slice(0, 1);
}

/** True for a noun that is plural as it stands: *pants*, *chips*. */
export function isPluralNoun(word: string, phonics: Phonics): boolean {
  if (pluralNouns.has(word)) return true;
  const ending = phonics.words.find(word)?.inflection?.ending;
  return ending === 's' || ending === 'es';
}

function spellingsWith(base: string, ending: Ending): readonly string[] {
  const made = [inflect(base, ending)];
  if (ending === 's' && /[^aeiou]o$/.test(base)) made.unshift(`${base}es`);
  if (
    (ending === 'ed' || ending === 'ing' || ending === 'er' || ending === 'est') &&
    /[aeiou][bdfgklmnprstvz]$/.test(base)
  ) {
    made.push(base + base.slice(-1) + ending);
  }
  return made;
}

/** What is listed was met in print with this spelling; a word made here that no list has is not offered. */
function isFormOf(word: string, base: string, ending: Ending | undefined, phonics: Phonics): boolean {
  if (!phonics.isListed(word)) return false;
  const inflections = phonics.readingsOf(word).flatMap(({ inflection }) => inflection ?? []);
  return inflections.length === 0
    ? ending === 's'
    : inflections.some((inflection) => inflection.base === base);
}

function formsWith(ending: Ending): readonly Omit<WordForm, 'base'>[] {
  switch (ending) {
    case 's':
    case 'es':
      return [
        { part: 'noun', form: 'plural' },
        { part: 'verb', form: 's' },
      ];
    case 'ed':
      return [
        { part: 'verb', form: 'past' },
        { part: 'verb', form: 'participle' },
      ];
    case 'ing':
      return [{ part: 'verb', form: 'ing' }];
    case 'er':
    case 'est':
      return [
        { part: 'adjective', form: ending },
        { part: 'adverb', form: ending },
      ];
    default:
      return [];
  }
}

function endingOf(form: FormName): Ending | undefined {
  switch (form) {
    case 'plural':
    case 's':
      return 's';
    case 'past':
    case 'participle':
      return 'ed';
    case 'ing':
    case 'er':
    case 'est':
      return form;
    default:
      return undefined;
  }
}
