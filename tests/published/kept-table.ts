import { readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/**
 * Compares a table with the one kept in `tables/`. With `KEEP_TABLES=1` in the environment it is written instead, for a
 * change that was looked at.
 */
export function expectKept(name: string, table: string): void {
  const file = new URL(`tables/${name}`, import.meta.url);
  if (process.env.KEEP_TABLES === '1') writeFileSync(file, table);
  expect(table).toBe(readFileSync(file, 'utf8'));
}
