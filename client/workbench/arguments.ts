/** What the caller of `npm start` asked for. */
export interface StartArguments {
  /** The folder to open, as it was written; none means the samples. */
  readonly folder?: string;
  /** The port to listen on; none means the usual one or, when that is taken, any free one. */
  readonly port?: number;
  /** False after `--no-open`: print the address and leave the browser alone. */
  readonly opensBrowser: boolean;
  /** True after `--help`. */
  readonly asksForHelp: boolean;
}

/** The text that `--help` prints and that follows a wrong call. */
export const startUsage = `Usage: npm start [FOLDER] [-- --port NUMBER --no-open]

Serves the VS Code workbench with Battledore on this machine and opens FOLDER in it (without FOLDER: the samples).
Every change is written to the files of the folder.

  --port NUMBER   listen on this port of 127.0.0.1
  --no-open       print the address only, open no browser`;

/**
 * Reads the words after `npm start`.
 *
 * @returns the arguments, or a sentence that says what is wrong with the call.
 */
export function readStartArguments(words: readonly string[]): StartArguments | string {
  let folder: string | undefined;
  let port: number | undefined;
  let opensBrowser = true;
  let asksForHelp = false;
  const rest = words.flatMap((word) => (word.startsWith('--port=') ? ['--port', word.slice(7)] : [word]));
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (word === '--help' || word === '-h') asksForHelp = true;
    else if (word === '--no-open') opensBrowser = false;
    else if (word === '--port') {
      const text = rest.shift() ?? '';
      port = Number(text);
      if (!/^\d{1,5}$/.test(text) || port > 65535)
        return `--port wants a number from 0 to 65535, not "${text}".`;
    } else if (word.startsWith('-')) return `There is no option "${word}".`;
    else if (folder !== undefined)
      return `One folder can be opened at a time, not "${folder}" and "${word}".`;
    else folder = word;
  }
  return {
    ...(folder === undefined ? {} : { folder }),
    ...(port === undefined ? {} : { port }),
    opensBrowser,
    asksForHelp,
  };
}
