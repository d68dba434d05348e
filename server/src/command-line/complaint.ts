import type { RuleId } from '../review/review.ts';
import type { LineAndColumn } from '../text/line-index.ts';
import type { Host } from './host.ts';

/** Why a file, or a part of it, could not be used. */
export interface Complaint {
  /** The file or folder, with forward slashes. */
  readonly path: string;
  readonly at?: LineAndColumn;
  readonly message: string;
  readonly rule?: RuleId;
}

/** Writes a complaint to the error output, in a form that terminals and editors make a link of. */
export function complain({ path, at, message, rule }: Complaint, host: Host): void {
  const place = at === undefined ? path : `${path}:${at.line}:${at.column}`;
  host.writeError(`${place}  ${message}${rule === undefined ? '' : `  [${rule}]`}\n`);
}
