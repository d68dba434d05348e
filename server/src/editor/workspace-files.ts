import type { Connection } from 'vscode-languageserver';
import type { ClientTraits } from './client-traits.ts';
import type { Host } from './host.ts';
import { type ListFilesParams, listFilesRequest, type ReadFileParams, readFileRequest } from './protocol.ts';
import type { Runner } from './runner.ts';

/** The files of the workspace, read by the host where they lie on its disk, else by the client. */
export interface WorkspaceFiles {
  /** The text of a file, within a root folder; null when there is none, or when it cannot be read, which is reported. */
  read(uri: string, root: string): Promise<string | null>;
  /** The files below a folder, at most so many; none when they cannot be listed, which is reported. */
  list(folder: string, most: number): Promise<readonly string[]>;
}

/** Reaches for files by whatever the host and the client can. */
export function createWorkspaceFiles(
  connection: Connection,
  host: Host,
  traits: ClientTraits,
  runner: Runner,
): WorkspaceFiles {
  return {
    read: async (uri, root) => {
      try {
        if (host.readFile !== undefined && uri.startsWith('file:')) return await host.readFile(uri, root);
        if (!traits.readsFiles) return null;
        const params: ReadFileParams = { uri };
        const text: unknown = await connection.sendRequest(readFileRequest, params);
        return typeof text === 'string' ? text : null;
      } catch (fault) {
        runner.report(`reading ${uri}`, fault);
        return null;
      }
    },
    list: async (folder, most) => {
      try {
        if (host.listFiles !== undefined && folder.startsWith('file:'))
          return await host.listFiles(folder, most);
        if (!traits.listsFiles) return [];
        const params: ListFilesParams = { folder, most };
        const files: unknown = await connection.sendRequest(listFilesRequest, params);
        return Array.isArray(files) ? files.filter((file) => typeof file === 'string').slice(0, most) : [];
      } catch (fault) {
        runner.report(`listing ${folder}`, fault);
        return [];
      }
    },
  };
}
