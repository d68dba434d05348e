import { l10n, window, workspace } from 'vscode';
import { beginSequence } from '../../../server/src/start/begin-sequence.ts';
import { choiceSteps, choicesFrom } from '../../../server/src/start/sequence-choices.ts';
import { sequenceText } from '../../../server/src/start/write-sequence.ts';
import { chooseAll } from './choose.ts';
import { folderForNewFiles, freeFile, writeAndOpen } from './new-file.ts';

/** Begins a sequence by the writer's answers and opens it; a file that is there stays as it is. */
export async function newSequence(): Promise<void> {
  const heading = l10n.t('New sequence');
  const title = await window.showInputBox({
    title: heading,
    prompt: l10n.t('The title of the sequence, as in “Willow Lane, grade 1”.'),
    ignoreFocusOut: true,
    validateInput: (text) => (text.trim() === '' ? l10n.t('A sequence has a title.') : undefined),
  });
  if (title === undefined) return;
  const answers = await chooseAll(heading, choiceSteps);
  if (answers === undefined) return;
  const text = sequenceText(beginSequence(choicesFrom(title.trim(), answers)));
  const folder = folderForNewFiles();
  if (folder === undefined) {
    await window.showTextDocument(await workspace.openTextDocument({ language: 'yaml', content: text }));
    return;
  }
  const file = await freeFile(folder, 'sequence.yaml', heading);
  if (file !== undefined) await writeAndOpen(file, text);
}
