/**
 * The path of a picture that a story names, or why it is not read.
 *
 * @param story the path of the story. @param folder the path of the folder that the picture has to lie in.
 */
export function picturePath(
  address: string,
  story: string,
  folder: string,
): string | { readonly trouble: string } {
  if (/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(address)) {
    return { trouble: 'is not a file beside the story; only such files are printed' };
  }
  const plain = decoded(address.replace(/[?#].*$/, ''));
  if (plain === undefined) return { trouble: 'has an address that cannot be read' };
  if (/^[/\\]/.test(plain)) {
    return { trouble: 'is not a relative path; give the way from the story’s folder to it' };
  }
  const parts = story.split('/').slice(0, -1);
  for (const part of plain.split(/[/\\]/)) {
    if (part === '..') parts.pop();
    else if (part !== '' && part !== '.') parts.push(part);
  }
  const path = parts.join('/');
  const root = folder.endsWith('/') ? folder : `${folder}/`;
  return path.startsWith(root)
    ? path
    : { trouble: 'leads out of the folder that the stories are in, and is not read' };
}

function decoded(address: string): string | undefined {
  try {
    return decodeURIComponent(address);
  } catch {
    return undefined;
  }
}
