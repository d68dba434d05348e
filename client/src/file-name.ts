import type { Uri } from 'vscode';

/** The last part of an address. */
export function fileName({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
