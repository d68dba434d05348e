import { Uri, type Webview } from 'vscode';
import type { WorkshopKind } from './messages.ts';

/** The page of a view: a frame for the script. Nothing of a story goes in here. */
export function workshopPage(webview: Webview, folder: Uri, kind: WorkshopKind): string {
  const address = (name: string): string => webview.asWebviewUri(Uri.joinPath(folder, name)).toString();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const nonce = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>Battledore</title>
  <link rel="stylesheet" href="${address('workshop.css')}">
</head>
<body data-kind="${kind}">
  <script nonce="${nonce}" src="${address('workshop.js')}"></script>
</body>
</html>`;
}
