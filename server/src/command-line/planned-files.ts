import { basename, join, relative, resolve } from 'node:path';
import type { Layout } from '../materials/layout/paper.ts';
import type { Material } from '../materials/order.ts';
import { isInside, withForwardSlashes } from './find-texts.ts';
import type { Host } from './host.ts';
import type { StoryToPrint } from './stories-to-print.ts';

/** A file that is to be written. */
export interface PlannedFile {
  /** As it is shown. */
  readonly path: string;
  readonly absolute: string;
  readonly stories: readonly StoryToPrint[];
}

/** What decides which files are written. */
export interface FileWishes {
  readonly material: Material;
  readonly layout: Layout;
  /** As given. */
  readonly out: string | undefined;
  readonly overwrites: boolean;
}

/** The files that the stories become, or why they cannot. */
export function planFiles(
  stories: readonly StoryToPrint[],
  { material, layout, out = '.', overwrites }: FileWishes,
  host: Host,
): { readonly files: readonly PlannedFile[] } | { readonly messages: readonly string[] } {
  const absolute = resolve(host.workingFolder, out);
  const kind = host.kindOf(absolute);
  const isOneFile = /\.pdf$/i.test(out) && kind !== 'folder';
  if (!isOneFile && kind === 'file') {
    return { messages: [`“${out}” is a file; --out wants a folder, or a file that ends in .pdf.`] };
  }
  const [extension] = /\.[a-z][a-z0-9]{1,4}$/i.exec(out) ?? [];
  if (!isOneFile && kind !== 'folder' && extension !== undefined) {
    return {
      messages: [`“${out}” ends in ${extension}; --out wants a file that ends in .pdf, or a folder.`],
    };
  }
  const ending = material === 'book' ? (layout === 'booklet' ? '-booklet' : '') : `-${material}`;
  const files = isOneFile
    ? [{ path: shown(absolute, host), absolute, stories }]
    : stories.map((story) => {
        const name = basename(story.found.absolute).replace(/\.[^.]+$/, '');
        const file = join(absolute, `${name}${ending}.pdf`);
        return { path: shown(file, host), absolute: file, stories: [story] };
      });
  const messages = files.flatMap(({ path, absolute: each, stories: own }, index) => {
    const twin = files.find((other, at) => at < index && other.absolute === each);
    if (twin !== undefined)
      return [`${own[0]?.path} and ${twin.stories[0]?.path} would both become ${path}.`];
    const there = host.kindOf(each);
    if (there === 'folder') return [`${path} is a folder.`];
    return there === 'file' && !overwrites ? [`${path} is there already; --overwrite replaces it.`] : [];
  });
  return messages.length > 0 ? { messages } : { files };
}

function shown(path: string, { workingFolder }: Host): string {
  return withForwardSlashes(isInside(path, workingFolder) ? relative(workingFolder, path) || '.' : path);
}
