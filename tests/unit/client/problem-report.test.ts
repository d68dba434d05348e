import { expect, test } from 'vitest';
import { problemReport, type ReportFacts } from '../../../client/src/report/problem-report.ts';

const facts: ReportFacts = {
  battledore: '0.1.0',
  editor: 'An Editor',
  version: '1.91.0',
  host: 'desktop',
  remote: undefined,
  system: 'linux x64',
  language: 'en',
  server: 'running',
  isTrusted: false,
  folders: 2,
  schemes: ['file'],
  stories: { all: 14, failing: 1, leftOut: 0 },
  settings: { sounds: 'ipa', largestFile: 1000 },
};

test('a report has versions, states and counts', () => {
  expect(
    problemReport(facts)
      .split('\n')
      .filter((line) => line.startsWith('- ')),
  ).toEqual([
    '- Battledore: 0.1.0',
    '- Editor: An Editor 1.91.0',
    '- Host: desktop',
    '- System: linux x64',
    '- Language: en',
    '- Server: running',
    '- Workspace: 2 folders (file), not trusted',
    '- Stories: 14, of which 1 fall short; 0 files left out',
    '- Settings: sounds ipa, largest file 1000 kB',
  ]);
});

test('what is not known yet is said to be', () => {
  const text = problemReport({
    ...facts,
    stories: undefined,
    system: undefined,
    schemes: [],
    folders: 0,
    remote: 'a-remote',
  });
  expect(text).toContain('- Stories: not counted yet');
  expect(text).toContain('- System: a browser');
  expect(text).toContain('- Workspace: 0 folders (none)');
  expect(text).toContain('- Host: desktop, a-remote');
});
