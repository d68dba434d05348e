import { execFileSync } from 'node:child_process';

/** True when a program of the system can be called; `.ci/run` sees to it that all are there. */
export function hasProgram(name: string): boolean {
  try {
    execFileSync(name, ['--version'], { stdio: 'ignore' });
    return true;
  } catch (fault) {
    return !(fault instanceof Error && 'code' in fault && fault.code === 'ENOENT');
  }
}

/** What a program writes to its output. */
export function outputOf(name: string, ...given: readonly string[]): string {
  return execFileSync(name, given, { encoding: 'utf8' });
}
