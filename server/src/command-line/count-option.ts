import type { Call } from './command.ts';

/** The whole number of an option; nothing when it is not given. */
export function readCount(
  options: Call['options'],
  name: string,
): number | undefined | { readonly message: string } {
  const given = options.get(name);
  if (given === undefined) return undefined;
  const count = /^\d{1,9}$/.test(given) ? Number(given) : undefined;
  return count ?? { message: `“${given}” is not a whole number.` };
}
