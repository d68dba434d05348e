/**
 * True for a path without `.` and `..` steps. A path with them can lie outside the folder whose name it begins with.
 * A backslash counts as a separator too: on Windows the disk takes it for one.
 */
export function isPlainPath(path: string): boolean {
  return !path.split(/[/\\]/).some((step) => step === '..' || step === '.');
}
