import { createRequire } from 'node:module';
import irregularPlurals from 'irregular-plurals';
import { rowsOf } from '../src/phonics/table.ts';
import { tableText } from './sources.ts';

/**
 * The forms that no ending makes, a line each, `base part form word`: *child noun plural children*. From the npm packages
 * irregular-plurals and english-verbs-irregular for the words of `bases`, then our own table `irregular-forms`, whose
 * rows replace all others of their base and form.
 */
export function irregularForms(bases: ReadonlySet<string>): string {
  const found = new Map<string, string[]>();
  const add = (base: string, part: string, form: string, word: string): void => {
    if (!bases.has(base) || !/^[a-z]+$/.test(word)) return;
    const key = `${base} ${part} ${form}`;
    const words = found.get(key) ?? [];
    if (!words.includes(word)) found.set(key, [...words, word]);
  };
  for (const [singular, plural] of irregularPlurals) add(singular, 'noun', 'plural', plural);
  const verbs = createRequire(import.meta.url)('english-verbs-irregular/dist/verbs.json') as Readonly<
    Record<string, readonly (readonly [past: string, participle: string])[]>
  >;
  for (const [base, pairs] of Object.entries(verbs)) {
    for (const [past, participle] of pairs) {
      add(base, 'verb', 'past', past);
      add(base, 'verb', 'participle', participle);
    }
  }
  for (const { base, part, form, words } of rowsOf(tableText('irregular-forms'), [
    'base',
    'part',
    'form',
    'words',
  ])) {
    found.set(
      `${base} ${part} ${form}`,
      words.split(' ').filter((word) => word !== ''),
    );
  }
  return [...found]
    .map(([key, words]) => `${key} ${words.join(' ')}`)
    .sort()
    .join('\n');
}
