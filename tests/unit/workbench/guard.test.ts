import { describe, expect, test } from 'vitest';
import { keyHeader } from '../../../client/workbench/agreement.ts';
import { hasKey, refusal } from '../../../client/workbench/guard.ts';

const port = 8746;
const own = { host: `127.0.0.1:${port}` };

describe('the guard of the workbench host', () => {
  test.each([
    ['its own page by number', own],
    ['its own page by name', { host: `localhost:${port}` }],
    [
      'a script of its own page',
      { ...own, origin: `http://127.0.0.1:${port}`, 'sec-fetch-site': 'same-origin' },
    ],
    ['an address that was typed', { ...own, 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate' }],
    ['a link on another page', { ...own, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' }],
  ])('lets %s pass', (_what, headers) => {
    expect(refusal({ method: 'GET', headers }, port)).toBeUndefined();
  });

  test.each([
    ['a name of the web that points here', { host: `stories.example:${port}` }],
    ['another port', { host: '127.0.0.1:80' }],
    ['no host', {}],
    ['a script of another page', { ...own, origin: 'http://stories.example' }],
    ['a page that hides its origin', { ...own, origin: 'null' }],
    [
      'another server on this machine',
      { ...own, origin: 'http://127.0.0.1:3000', 'sec-fetch-site': 'same-site' },
    ],
    ['a picture on another page', { ...own, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' }],
  ])('turns away %s', (_what, headers) => {
    expect(refusal({ method: 'GET', headers }, port)).toBeTypeOf('string');
  });

  test('a form of another page is turned away though it navigates', () => {
    const headers = { ...own, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' };
    expect(refusal({ method: 'POST', headers }, port)).toBeTypeOf('string');
  });

  test('only the whole key of the run is the key', () => {
    const asks = (key: string | undefined) =>
      hasKey({ method: 'GET', headers: { [keyHeader]: key } }, 'abcdef');
    expect(asks('abcdef')).toBe(true);
    for (const wrong of [undefined, '', 'abcde', 'abcdeg', 'abcdefg']) expect(asks(wrong)).toBe(false);
  });
});
