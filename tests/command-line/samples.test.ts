import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { wordKinds } from '../../server/src/review/review.ts';
import { rules } from '../../server/src/review/rules/registry.ts';
import { terminal } from '../support/memory-host.ts';
import { packagePhonics } from '../support/package-phonics.ts';

interface ReportedStory {
  readonly path: string;
  readonly title: string;
  readonly lesson: string;
  readonly counts: Readonly<Record<string, number>>;
  readonly passes: boolean;
  readonly words: readonly { readonly text: string; readonly kind: string }[];
  readonly findings: readonly { readonly rule: string; readonly message: string }[];
}

const folder = new URL('../../samples/', import.meta.url);
const files: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => [`samples/${name}`, readFileSync(new URL(name, folder), 'utf8')]),
);

const outcome = terminal(files, packagePhonics)('check', 'samples', '--format', 'json');
const { stories }: { stories: readonly ReportedStory[] } = JSON.parse(outcome.output);
const isDraft = ({ path }: ReportedStory): boolean => path.includes('draft');
const finished = stories.filter((story) => !isDraft(story));
const drafts = stories.filter(isDraft);

describe('the sequence of the samples', () => {
  it('has nothing wrong in it', () => {
    expect(outcome.errors).toBe('');
  });

  it('has at least thirty lessons, each with a title', () => {
    const lines = (files['samples/sequence.yaml'] ?? '').split('\n');
    const lessons = lines.filter((line) => /^ {2}- name: /.test(line));
    const titled = lines.filter(
      (line, at) => /^ {4}title: \S/.test(line) && lessons.includes(lines[at - 1] ?? ''),
    );
    expect(lessons.length).toBeGreaterThanOrEqual(30);
    expect(titled.length).toBe(lessons.length);
  });
});

describe('the stories of the samples', () => {
  it('are all read; what is not a story is left alone', () => {
    const pages = Object.keys(files).filter((path) => path.endsWith('.md') && !path.endsWith('README.md'));
    expect(stories.map(({ path }) => path).sort()).toEqual(pages.sort());
  });

  it('pass with nothing to find', () => {
    const found = finished.flatMap(({ path, findings }) =>
      findings.map(({ message }) => `${path}: ${message}`),
    );
    expect(found).toEqual([]);
    expect(finished.filter(({ passes }) => !passes).map(({ path }) => path)).toEqual([]);
  });

  it('are of 60 to 150 words', () => {
    const misfits = finished
      .map(({ path, counts }) => ({ path, words: counts.words ?? 0 }))
      .filter(({ words }) => words < 60 || words > 150);
    expect(misfits).toEqual([]);
    expect(finished.length).toBeGreaterThanOrEqual(10);
  });

  it('are spread along the sequence, each in the file of its lesson', () => {
    const lessons = finished.map(({ lesson }) => Number(lesson));
    expect(Math.min(...lessons)).toBeLessThanOrEqual(4);
    expect(Math.max(...lessons)).toBeGreaterThanOrEqual(36);
    expect(new Set(lessons).size).toBe(lessons.length);
    for (const { path, lesson } of stories) expect(path).toContain(`samples/${lesson.padStart(2, '0')}-`);
  });

  it('show only drawings that are there', () => {
    const drawings = Object.values(files).flatMap((text) =>
      [...text.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, address]) => address ?? ''),
    );
    expect(drawings.length).toBeGreaterThan(0);
    expect(drawings.filter((address) => !existsSync(new URL(address, folder)))).toEqual([]);
  });
});

describe('the draft of the samples', () => {
  it('is one, and falls short', () => {
    expect(drafts.map(({ passes }) => passes)).toEqual([false]);
    expect(outcome.exitCode).toBe(1);
  });

  it('shows every finding that a story can have', () => {
    const found = new Set(drafts.flatMap(({ findings }) => findings.map(({ rule }) => rule)));
    const ofStories = rules.map(({ id }) => id).filter((id) => id !== 'sequence-problem');
    expect([...found].sort()).toEqual([...ofStories].sort());
  });

  it('shows every kind of word', () => {
    const kinds = new Set(drafts.flatMap(({ words }) => words.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual([...wordKinds].sort());
  });
});
