/**
 * Addresses of files, as strings. Clients escape them differently (`c%3A` or `C:`, `é` or `%C3%A9`); the canonical form
 * is the same for all and is what is compared.
 */

/** Why a relative path of a story cannot be followed. */
export type PathFault = 'absolute' | 'unusable' | 'outside';

interface Parts {
  /** Scheme and authority: `file://`, `vscode-vfs://host`. */
  readonly head: string;
  readonly segments: readonly string[];
  /** Query and fragment, with their marks. */
  readonly tail: string;
}

/** The one form of an address; an address without a path from a root (`untitled:a`) stays as it is. */
export function canonicalUri(uri: string): string {
  const parts = partsOf(uri);
  return parts === undefined ? uri : joined(parts);
}

/** The folder an address stands in, canonical; nothing for a root or an address without a path. */
export function parentOf(uri: string): string | undefined {
  const parts = partsOf(uri);
  if (parts === undefined || parts.segments.length === 0) return undefined;
  return joined({ head: parts.head, segments: parts.segments.slice(0, -1), tail: '' });
}

/** True when `uri` is `folder` or lies below it. Both canonical. */
export function isInside(uri: string, folder: string): boolean {
  return uri === folder || uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

/** The address of a file directly in a folder. */
export function childOf(folder: string, name: string): string {
  return `${folder.endsWith('/') ? folder : `${folder}/`}${escaped(name)}`;
}

/** The last part of an address, unescaped; empty for a root. */
export function fileName(uri: string): string {
  return partsOf(uri)?.segments.at(-1) ?? '';
}

/** True for the name of a YAML file. */
export function isYamlName(uri: string): boolean {
  return /\.ya?ml$/i.test(fileName(uri));
}

/** Follows a relative path from a folder; what lies outside `root` is not followed. All addresses canonical. */
export function resolvedIn(folder: string, path: string, root: string): string | PathFault {
  if (/^([\\/]|[a-z][a-z0-9+.-]*:)/i.test(path)) return 'absolute';
  const parts = partsOf(folder);
  if (parts === undefined || path.trim() === '' || hasControlOrBackslash(path)) return 'unusable';
  const segments = [...parts.segments];
  for (const segment of path.split('/')) {
    if (segment === '' || segment === '.') continue;
    if (segment !== '..') segments.push(segment);
    else if (segments.pop() === undefined) return 'outside';
  }
  const resolved = joined({ head: parts.head, segments, tail: '' });
  return isInside(resolved, root) && resolved !== root ? resolved : 'outside';
}

function partsOf(uri: string): Parts | undefined {
  const match = /^([a-z][a-z0-9+.-]*:(?:\/\/[^/?#]*)?)(\/[^?#]*)?([?#].*)?$/is.exec(uri);
  if (match === null || match[1] === undefined || (match[2] === undefined && !match[1].includes('//'))) {
    return undefined;
  }
  const segments: string[] = [];
  for (const segment of (match[2] ?? '/').split('/')) {
    const plain = unescaped(segment);
    if (plain === '' || plain === '.') continue;
    if (plain === '..') segments.pop();
    else segments.push(segments.length === 0 && /^[A-Z]:$/.test(plain) ? plain.toLowerCase() : plain);
  }
  return { head: match[1].toLowerCase(), segments, tail: match[3] ?? '' };
}

function joined(parts: Parts): string {
  return `${parts.head}/${parts.segments.map(escaped).join('/')}${parts.tail}`;
}

function escaped(segment: string): string {
  try {
    return encodeURIComponent(segment).replace(
      /[!'()*]/g,
      (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
    );
  } catch {
    return segment; // half a surrogate pair has no escaped form
  }
}

function unescaped(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment;
  }
}

function hasControlOrBackslash(path: string): boolean {
  for (let at = 0; at < path.length; at++) {
    if (path.charCodeAt(at) < 32 || path[at] === '\\') return true;
  }
  return false;
}
