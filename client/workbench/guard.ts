import { timingSafeEqual } from 'node:crypto';
import { keyHeader } from './agreement.ts';

/** What the guard looks at in a request. */
export interface GuardedRequest {
  readonly method: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

/**
 * Says why a request is turned away, or nothing when it may pass. Two things are refused: a Host that is not this
 * machine's loopback (a name of the web that was pointed at 127.0.0.1), and a request that a page of another origin
 * makes. Both are needed, for the browser sends the requests of every page to this port when asked.
 */
export function refusal(request: GuardedRequest, port: number): string | undefined {
  const host = single(request.headers.host);
  if (host === undefined || !loopbackHosts(port).includes(host.toLowerCase())) {
    return 'Only this machine may ask.';
  }
  const origin = single(request.headers.origin);
  if (origin !== undefined && origin !== `http://${host}`) return 'Another page may not ask.';
  const site = single(request.headers['sec-fetch-site']);
  const opensThePage = single(request.headers['sec-fetch-mode']) === 'navigate' && request.method === 'GET';
  if (site !== undefined && site !== 'same-origin' && site !== 'none' && !opensThePage) {
    return 'Another page may not ask.';
  }
  return undefined;
}

/** True when the request carries the key of this run. */
export function hasKey(request: GuardedRequest, key: string): boolean {
  return isSameKey(single(request.headers[keyHeader]), key);
}

/** Compares two keys in a time that does not depend on where they differ. */
export function isSameKey(given: string | undefined, key: string): boolean {
  if (given === undefined) return false;
  const left = Buffer.from(given);
  const right = Buffer.from(key);
  return left.length === right.length && timingSafeEqual(left, right);
}

function loopbackHosts(port: number): readonly string[] {
  return [`127.0.0.1:${port}`, `localhost:${port}`];
}

function single(header: string | string[] | undefined): string | undefined {
  return Array.isArray(header) ? undefined : header;
}
