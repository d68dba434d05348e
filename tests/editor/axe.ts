/// <reference lib="dom" />
import axe from 'axe-core';
import type { Frame } from 'playwright-core';

interface Axe {
  run(): Promise<{ readonly violations: readonly { id: string; nodes: readonly { html: string }[] }[] }>;
}

/** Looks for barriers in a page of the extension with axe-core; throws with what it finds. */
export async function expectNoBarriers(frame: Frame): Promise<void> {
  await frame.evaluate(axe.source);
  const found = await frame.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: Axe }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
  });
  if (found.length > 0) throw new Error(found.join('; '));
}
