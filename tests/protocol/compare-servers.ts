import type { GaugeParams } from '../../server/src/editor/protocol.ts';
import { pause, type TrafficClient } from './traffic-client.ts';

/** How often both are asked before a difference counts: what is sent unasked may come some time later. */
const mostTimes = 21;

/**
 * What a server that has passed a day says otherwise of a document than a fresh one, diagnostics and gauge; nothing as soon as
 * both say the same.
 */
export async function differenceOf(
  uri: string,
  day: TrafficClient,
  fresh: TrafficClient,
): Promise<string | undefined> {
  for (let left = mostTimes; ; left--) {
    const [found, expected] = [await told(day, uri), await told(fresh, uri)];
    if (found === expected) return undefined;
    if (left === 1) {
      return `the day's server says ${excerpt(found, expected)}, a fresh one ${excerpt(expected, found)}`;
    }
    await pause(150);
  }
}

async function told(client: TrafficClient, uri: string): Promise<string> {
  const diagnostics = await client.diagnostics(uri);
  return JSON.stringify({ diagnostics, gauge: withoutVersion(client.gauge(uri)) });
}

function withoutVersion(params: GaugeParams | undefined): unknown {
  if (params === undefined) return undefined;
  return 'gauge' in params
    ? { ...params, version: 0, gauge: { ...params.gauge, version: 0 } }
    : { ...params, version: 0 };
}

function excerpt(of: string, beside: string): string {
  let at = 0;
  while (of[at] === beside[at] && at < of.length) at++;
  return `…${of.slice(Math.max(0, at - 100), at + 200)}…`;
}
