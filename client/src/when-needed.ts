import { type Disposable, type TextDocument, workspace } from 'vscode';

/**
 * Runs `start` once, as soon as there is something to check: at once, unless the extension was woken by YAML files none of
 * which is a sequence, in a workspace that has no sequence. Then the first story or sequence that is opened starts it.
 *
 * @returns what ends the waiting, and a promise that settles when the first look is over.
 */
export function startWhenNeeded(start: () => Promise<void>): Disposable & { readonly looked: Promise<void> } {
  let isOver = false;
  const startOnce = async (): Promise<void> => {
    if (isOver) return;
    isOver = true;
    waiting.dispose();
    await start();
  };
  const waiting = workspace.onDidOpenTextDocument((document) => {
    if (isOurs(document)) void startOnce();
  });
  const look = async (): Promise<void> => {
    const open = workspace.textDocuments;
    const isStranger = open.some(({ languageId }) => languageId === 'yaml') && !open.some(isOurs);
    if (!isStranger || (await hasSequence())) await startOnce();
  };
  return {
    looked: look(),
    dispose: () => {
      isOver = true;
      waiting.dispose();
    },
  };
}

function isOurs({ languageId, uri }: TextDocument): boolean {
  return languageId === 'markdown' || uri.path.endsWith('/sequence.yaml');
}

async function hasSequence(): Promise<boolean> {
  return workspace.findFiles('**/sequence.yaml', '**/node_modules/**', 1).then(
    (found) => found.length > 0,
    () => false,
  );
}
