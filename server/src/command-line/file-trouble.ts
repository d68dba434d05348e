import { type FileRead, largestFile } from './host.ts';

/** Why a file cannot be had, to complete a sentence that begins with its name. */
export function fileTrouble(read: Exclude<FileRead, { kind: 'text' }>, largest = largestFile): string {
  switch (read.kind) {
    case 'missing':
      return 'is not there';
    case 'too-large':
      return `is too large: it has ${megabytes(read.bytes)} MB, and at most ${megabytes(largest)} MB are read`;
    case 'unreadable':
      return `cannot be read: ${read.reason}`;
  }
}

function megabytes(bytes: number): string {
  return (Math.ceil(bytes / 100_000) / 10).toFixed(1);
}
