import type { PartOfSpeech } from './thesaurus-format.ts';

/** What a form does: `s` is the verb's (*runs*), `participle` stands after have and be, the rest as they are called. */
export const formNames = ['base', 'plural', 's', 'past', 'participle', 'ing', 'er', 'est'] as const;
/** The name of a form. */
export type FormName = (typeof formNames)[number];

/** A word taken apart into its base form and what the form does. */
export interface WordForm {
  readonly base: string;
  readonly part: PartOfSpeech;
  readonly form: FormName;
}

/** The forms that no ending makes. */
export interface IrregularForms {
  /** What a word may be a form of. */
  formsOf(word: string): readonly WordForm[];
  /** How a base writes a form, the commonest first; undefined when an ending makes it, empty when there is none. */
  wordsFor(base: string, part: PartOfSpeech, form: FormName): readonly string[] | undefined;
}

/** Reads lines `base part form word …`. */
export function readIrregularForms(table: string): IrregularForms {
  const byWord = new Map<string, WordForm[]>();
  const byBase = new Map<string, readonly string[]>();
  for (const line of table.split('\n')) {
    const [base = '', partName = '', formName = '', ...words] = line.trimEnd().split(' ');
    const part = partOf(partName);
    const form = formNames.find((name) => name === formName);
    if (part === undefined || form === undefined) continue;
    byBase.set(`${base} ${part} ${form}`, words);
    for (const word of words) {
      const forms = byWord.get(word);
      if (forms === undefined) byWord.set(word, [{ base, part, form }]);
      else forms.push({ base, part, form });
    }
  }
  return {
    formsOf: (word) => byWord.get(word) ?? [],
    wordsFor: (base, part, form) => byBase.get(`${base} ${part} ${form}`),
  };
}

function partOf(name: string): PartOfSpeech | undefined {
  return name === 'noun' || name === 'verb' || name === 'adjective' || name === 'adverb' ? name : undefined;
}
