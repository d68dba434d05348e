import {
  commands,
  type Disposable,
  type ExtensionContext,
  env,
  l10n,
  version,
  window,
  workspace,
} from 'vscode';
import type { StoriesParams } from '../../../server/src/editor/protocol.ts';
import { readSettings, settingsSection } from '../../../server/src/editor/settings.ts';
import type { ServerState } from '../gauge-store.ts';
import { problemReport } from './problem-report.ts';

/** The command that opens a report of versions and counts for the writer to read; nothing is sent. */
export function registerReport(
  { extension }: ExtensionContext,
  server: () => ServerState,
  latest: () => StoriesParams | undefined,
): Disposable {
  return commands.registerCommand('battledore.reportProblem', async () => {
    const folders = workspace.workspaceFolders ?? [];
    const stories = latest();
    const text = problemReport({
      battledore: String(extension.packageJSON.version),
      editor: env.appName,
      version,
      host: env.appHost,
      remote: env.remoteName,
      system: typeof process === 'object' ? `${process.platform} ${process.arch}` : undefined,
      language: env.language,
      server: server(),
      isTrusted: workspace.isTrusted,
      folders: folders.length,
      schemes: [...new Set(folders.map(({ uri }) => uri.scheme))],
      stories: stories && {
        all: stories.stories,
        failing: stories.failing.length,
        leftOut: stories.leftOut,
      },
      settings: readSettings(workspace.getConfiguration(settingsSection)),
    });
    const document = await workspace.openTextDocument({ language: 'markdown', content: text });
    await window.showTextDocument(document);
    const copy = l10n.t('Copy');
    const chosen = await window.showInformationMessage(
      l10n.t(
        'Read it, say what went wrong, and send it to whoever gave you Battledore. Nothing has been sent.',
      ),
      copy,
    );
    if (chosen === copy) await env.clipboard.writeText(document.getText());
  });
}
