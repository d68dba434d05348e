/** What may be told of an editor and its workspace: versions, states and counts. There is no place in it for a text or a name. */
export interface ReportFacts {
  readonly battledore: string;
  readonly editor: string;
  /** The editor's version. */
  readonly version: string;
  /** `desktop`, or the host that serves the editor. */
  readonly host: string;
  /** Where extensions run: the name of a kind of remote, such as `ssh-remote`. */
  readonly remote: string | undefined;
  /** System and processor; absent in a browser. */
  readonly system: string | undefined;
  readonly language: string;
  readonly server: 'starting' | 'running' | 'stopped';
  readonly isTrusted: boolean;
  readonly folders: number;
  /** Kinds of places that folders lie in: `file`, `vscode-vfs`. */
  readonly schemes: readonly string[];
  /** Of the index of stories; absent before it is made. */
  readonly stories: { readonly all: number; readonly failing: number; readonly leftOut: number } | undefined;
  readonly settings: { readonly sounds: string; readonly largestFile: number };
}

/** The report as markdown, for the writer to read, complete and send as she likes. */
export function problemReport(facts: ReportFacts): string {
  const { stories, settings } = facts;
  const rows: readonly (readonly [string, string])[] = [
    ['Battledore', facts.battledore],
    ['Editor', `${facts.editor} ${facts.version}`],
    ['Host', facts.remote === undefined ? facts.host : `${facts.host}, ${facts.remote}`],
    ['System', facts.system ?? 'a browser'],
    ['Language', facts.language],
    ['Server', facts.server],
    [
      'Workspace',
      `${facts.folders} folders (${facts.schemes.join(', ') || 'none'}), ${facts.isTrusted ? 'trusted' : 'not trusted'}`,
    ],
    [
      'Stories',
      stories === undefined
        ? 'not counted yet'
        : `${stories.all}, of which ${stories.failing} fall short; ${stories.leftOut} files left out`,
    ],
    ['Settings', `sounds ${settings.sounds}, largest file ${settings.largestFile} kB`],
  ];
  return [
    '# What went wrong',
    '',
    'Write here what you did, what you saw and what you expected.',
    '',
    '# Versions and counts',
    '',
    'Battledore has gathered these. No text, no name of a file and nothing of a child is among them, and nothing has been sent.',
    '',
    ...rows.map(([name, value]) => `- ${name}: ${value}`),
    '',
  ].join('\n');
}
