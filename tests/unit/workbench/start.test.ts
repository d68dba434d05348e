import { describe, expect, test } from 'vitest';
import { readStartArguments } from '../../../client/workbench/arguments.ts';
import { compareSnapshots } from '../../../client/workbench/changes.ts';
import { admitOwnHost } from '../../../client/workbench/webview-page.ts';

describe('the words after npm start', () => {
  const usual = { opensBrowser: true, asksForHelp: false };
  test.each([
    ['', usual],
    ['stories', { ...usual, folder: 'stories' }],
    ['stories --port 9000', { ...usual, folder: 'stories', port: 9000 }],
    ['--port=0 --no-open', { ...usual, opensBrowser: false, port: 0 }],
    ['--help', { ...usual, asksForHelp: true }],
  ])('"%s"', (line, expected) => {
    expect(readStartArguments(line.split(' ').filter(Boolean))).toEqual(expected);
  });

  test.each([
    ['--port', '--port wants a number'],
    ['--port 70000', '--port wants a number'],
    ['--port 1e3', '--port wants a number'],
    ['--prot 80', 'There is no option "--prot"'],
    ['one two', 'One folder'],
  ])('"%s" is answered with a sentence', (line, expected) => {
    expect(readStartArguments(line.split(' '))).toContain(expected);
  });
});

describe('changes on the disk', () => {
  const marks = (text: string) => new Map(text.split(' ').map((mark) => mark.split(':') as [string, string]));
  test.each([
    ['a.md:1 b.md:1', 'a.md:1 b.md:1', []],
    ['a.md:1', 'a.md:2', [{ path: 'a.md', type: 'changed' }]],
    ['a.md:1', 'a.md:1 b.md:1', [{ path: 'b.md', type: 'created' }]],
    ['a.md:1 b.md:1', 'b.md:1', [{ path: 'a.md', type: 'deleted' }]],
  ])('%s then %s', (before, after, expected) => {
    expect(compareSnapshots(marks(before), marks(after))).toEqual(expected);
  });
});

test('a webview page that is not the known one is refused', () => {
  expect(() => admitOwnHost('<script async type="module">start()</script>')).toThrow('has changed');
});
