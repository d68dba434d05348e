import { Uri, type Webview } from 'vscode';

/** What a page in the editor is made of; the files lie in `client/dist`. */
export interface WebviewFrame {
  /** For screen readers and the developer tools. */
  readonly title: string;
  readonly script: string;
  readonly style: string;
  /** Given to the script as `data-kind` of the body. */
  readonly kind?: string;
  /** True for a page that shows pictures which its script makes of bytes. */
  readonly showsPictures?: boolean;
}

/** The only folder that a page may load from: scripts and style sheets of the extension. */
export function webviewFolder(extensionUri: Uri): Uri {
  return Uri.joinPath(extensionUri, 'client', 'dist');
}

/**
 * The page: a frame for the script, which builds everything else from plain text. Nothing of a story goes in here, and
 * nothing is loaded from elsewhere.
 */
export function webviewFrame(
  webview: Webview,
  extensionUri: Uri,
  { title, script, style, kind, showsPictures = false }: WebviewFrame,
): string {
  const address = (name: string): string =>
    webview.asWebviewUri(Uri.joinPath(webviewFolder(extensionUri), name)).toString();
  const nonce = randomNonce();
  const pictures = showsPictures ? 'img-src blob:; ' : '';
  return `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; ${pictures}style-src ${webview.cspSource}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>${title}</title>
  <link rel="stylesheet" href="${address(style)}">
</head>
<body${kind === undefined ? '' : ` data-kind="${kind}"`}>
  <script nonce="${nonce}" src="${address(script)}"></script>
</body>
</html>`;
}

function randomNonce(): string {
  // `randomUUID` is missing where the editor is served without encryption.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
