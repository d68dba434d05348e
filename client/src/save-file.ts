import { FileSystemError, l10n, Uri, window, workspace } from 'vscode';
import { fileName } from './file-name.ts';
import { type WritableFiles, writeWhole } from './workshop/write-whole.ts';

/**
 * Writes a file through the editor's file system, whole or not at all; asks before one that is there is replaced. Failures
 * reject.
 *
 * @returns false when nothing was written because the writer keeps the file that is there.
 */
export async function saveFile(place: Uri, bytes: Uint8Array): Promise<boolean> {
  return writeWhole(files, place, bytes, mayReplace);
}

const files: WritableFiles<Uri> = {
  exists: async (place) => {
    try {
      await workspace.fs.stat(place);
      return true;
    } catch (error) {
      if (error instanceof FileSystemError && error.code === 'FileNotFound') return false;
      throw error;
    }
  },
  write: (place, bytes) => workspace.fs.writeFile(place, bytes),
  move: (from, to, overwrite) => workspace.fs.rename(from, to, { overwrite }),
  remove: (place) => workspace.fs.delete(place),
  beside: (place) => Uri.joinPath(place, '..', `.${fileName(place)}.unfinished`),
};

/** Some save dialogs ask about a file that is there, others do not; asking here is sure. */
async function mayReplace(): Promise<boolean> {
  const replace = l10n.t('Replace');
  const answer = await window.showWarningMessage(
    l10n.t('The file is there already.'),
    { modal: true },
    replace,
  );
  return answer === replace;
}
