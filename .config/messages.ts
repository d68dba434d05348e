/**
 * Collects the messages of the extension for translation: every `l10n.t('…')` of the client goes into
 * `client/l10n/bundle.l10n.json`, in the form that VS Code reads. `npm run messages`; a test compares. The titles and
 * descriptions of the manifest stand in `package.nls.json`.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { columnUses } from '../server/src/start/column-uses.ts';
import { choiceSteps } from '../server/src/start/sequence-choices.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const bundle = join(root, 'client/l10n/bundle.l10n.json');

/** Messages that come from tables, and the files that show them. */
const ofTables: readonly string[] = [
  ...choiceSteps.flatMap(({ question, answers }) => [
    question,
    ...answers.flatMap(({ label, because }) => [label, because]),
  ]),
  ...columnUses,
];
const showTables = ['start/choose.ts', 'start/import-sequence.ts'];

/** The messages of the sources as the text of the bundle, in the order of the alphabet. Throws on one that is no literal. */
export function collectedMessages(): string {
  const files = readdirSync(join(root, 'client/src'), { recursive: true, encoding: 'utf8' });
  const found = new Set(ofTables);
  for (const file of files.filter((name) => name.endsWith('.ts')).sort()) {
    const text = readFileSync(join(root, 'client/src', file), 'utf8');
    for (const { index } of text.matchAll(/\bl10n\.t\(/g)) {
      const literal = /^l10n\.t\(\s*('(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*")/.exec(text.slice(index))?.[1];
      if (literal === undefined && showTables.includes(file)) continue;
      if (literal === undefined) {
        const line = text.slice(0, index).split('\n').length;
        throw new Error(`client/src/${file}:${line}: a message for translation has to be a literal.`);
      }
      found.add(textOf(literal));
    }
  }
  const messages = Object.fromEntries([...found].sort().map((message) => [message, message]));
  return `${JSON.stringify(messages, null, 2)}\n`;
}

function textOf(literal: string): string {
  return literal
    .slice(1, -1)
    .replace(/\\(.)/g, (_, character: string) => (character === 'n' ? '\n' : character));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(bundle, collectedMessages());
