import { l10n } from 'vscode';

/** What is said where a command wants a story and there is none. */
export function storyFirst(): string {
  return l10n.t('Open a story first: a markdown file that names its lesson at the top.');
}

/** What is said where something is asked of a server that does not answer. */
export function checkingStopped(): string {
  return l10n.t('Checking does not run. “Battledore: Restart Checking” starts it.');
}
