import fc from 'fast-check';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';
import { type Analysis, findingsOf } from '../../server/src/editor/analysis.ts';
import { createAnalyst } from '../../server/src/editor/analyst.ts';
import { gaugeParamsOf } from '../../server/src/editor/gauge.ts';
import { createOpenDocuments } from '../../server/src/editor/open-documents.ts';
import { createPageDiagnostics, type PageDiagnostics } from '../../server/src/editor/page-diagnostics.ts';
import { createSequenceFiles, type SequenceFiles } from '../../server/src/editor/sequence-files.ts';
import { shownOf } from '../../server/src/editor/shown.ts';
import { workspaceOf } from '../../server/src/editor/workspace.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { hostilePieces, sequenceTexts, startTexts } from './hostile-pieces.ts';

/** One change of a text, in offsets that are thousandths of its length. */
interface Change {
  /** Where, 0 to 999. */
  readonly at: number;
  /** How many UTF-16 code units go. */
  readonly cut: number;
  /** What comes instead. */
  readonly text: string;
}

/** One step of a writer's work. */
export type Step =
  | { readonly does: 'edit'; readonly changes: readonly Change[] }
  /** A stretch goes and stands elsewhere. */
  | { readonly does: 'move'; readonly from: number; readonly length: number; readonly to: number }
  /** The whole text is sent again without a range. */
  | { readonly does: 'replace all'; readonly with: string }
  /** The text of so many versions before. */
  | { readonly does: 'undo'; readonly steps: number }
  /** Another of `sequenceTexts` stands on disk; -1: none. */
  | { readonly does: 'sequence'; readonly number: number };

/** A story as it is opened, the sequence beside it, and what is done then. */
export interface EditScript {
  readonly start: string;
  /** Which of `sequenceTexts` stands beside the story. */
  readonly sequence: number;
  readonly steps: readonly Step[];
}

const piece = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...hostilePieces) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 4 }) },
);
const pasted = fc.array(piece, { maxLength: 5 }).map((pieces) => pieces.join(''));
const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat({ max: 999 }),
  cut: fc.oneof(fc.constant(0), fc.nat({ max: 4 }), fc.nat({ max: 80 })),
  text: fc.oneof(fc.constant(''), piece, piece, pasted),
});
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 12,
    arbitrary: fc.array(change, { minLength: 1, maxLength: 2 }).map((changes) => ({
      does: 'edit' as const,
      changes,
    })),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      does: fc.constant('move' as const),
      from: fc.nat({ max: 999 }),
      length: fc.nat({ max: 60 }),
      to: fc.nat({ max: 999 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      does: fc.constant('replace all' as const),
      with: fc.oneof(fc.constantFrom(...startTexts), pasted),
    }),
  },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('undo' as const), steps: fc.nat({ max: 3 }) }) },
  {
    weight: 1,
    arbitrary: fc.record({
      does: fc.constant('sequence' as const),
      number: fc.integer({ min: -1, max: sequenceTexts.length - 1 }),
    }),
  },
);

/** Scripts of up to six steps. */
export const editScript: fc.Arbitrary<EditScript> = fc.record({
  start: fc.constantFrom(...startTexts),
  sequence: fc.nat({ max: sequenceTexts.length - 1 }),
  steps: fc.array(step, { minLength: 1, maxLength: 6 }),
});

const folder = 'file:///lane';
const storyUri = `${folder}/story.md`;
const sequenceUri = `${folder}/sequence.yaml`;

/**
 * Plays a script to one editor that goes on from version to version, and after each step compares what it knows with what
 * an editor says that sees the text for the first time.
 *
 * @throws Error that shows the step, the text and the first difference.
 */
export async function playScript(script: EditScript, phonics: Phonics): Promise<void> {
  const desk = createDesk(phonics, script.sequence);
  desk.open(script.start);
  const versions = [script.start];
  await desk.analyse();
  for (const [index, each] of script.steps.entries()) {
    const text = desk.text();
    if (each.does === 'sequence') desk.setSequence(each.number);
    else desk.edit(changesOf(each, text, versions));
    versions.push(desk.text());
    await compare(desk, `step ${index + 1}, ${JSON.stringify(each)}`, phonics);
  }
}

/** An editor of one story beside one sequence on disk, with the server's own memory from version to version. */
function createDesk(phonics: Phonics, sequence: number, shared?: SequenceFiles) {
  const documents = createOpenDocuments();
  let number = sequence;
  let version = 1;
  const sequences =
    shared ??
    createSequenceFiles({
      phonics,
      open: documents.at,
      read: async (uri) => (uri === sequenceUri ? (sequenceTexts[number] ?? null) : null),
    });
  const workspace = workspaceOf([folder]);
  const analyst = createAnalyst({
    phonics,
    sequences,
    furtherProblems: () => [],
    open: documents.get,
    workspace: () => workspace,
    largestFile: () => 1000,
  });
  const snapshot = () => {
    const open = documents.get(storyUri);
    if (open === undefined) throw new Error('The story is not open.');
    return open;
  };
  return {
    open: (text: string) => documents.open(storyUri, 'markdown', version, text),
    /** Offsets of each change are those of the text before it. */
    edit: (changes: readonly (string | { start: number; end: number; text: string })[]) => {
      for (const each of changes) {
        const { document } = snapshot();
        const sent: TextDocumentContentChangeEvent =
          typeof each === 'string'
            ? { text: each }
            : {
                range: { start: document.positionAt(each.start), end: document.positionAt(each.end) },
                text: each.text,
              };
        documents.edit(storyUri, [sent], ++version);
      }
    },
    setSequence: (next: number) => {
      number = next;
      sequences.changed(sequenceUri);
    },
    sequence: () => number,
    pages: createPageDiagnostics(),
    text: () => snapshot().document.getText(),
    analyse: async (): Promise<Analysis> => {
      const analysis = await analyst.analyse(storyUri);
      if (analysis === undefined) throw new Error('The story is not open.');
      return analysis;
    },
  };
}

function changesOf(
  step: Exclude<Step, { does: 'sequence' }>,
  text: string,
  versions: readonly string[],
): readonly (string | { start: number; end: number; text: string })[] {
  switch (step.does) {
    case 'replace all':
      return [step.with];
    case 'undo':
      return [versions[Math.max(0, versions.length - 1 - step.steps)] ?? text];
    case 'move': {
      const start = placeIn(text.length, step.from);
      const moved = text.slice(start, start + step.length);
      const to = placeIn(text.length - moved.length, step.to);
      return [
        { start, end: start + moved.length, text: '' },
        { start: to, end: to, text: moved },
      ];
    }
    case 'edit': {
      let { length } = text;
      return step.changes.map(({ at, cut, text: inserted }) => {
        const start = placeIn(length, at);
        const end = Math.min(length, start + cut);
        length += inserted.length - (end - start);
        return { start, end, text: inserted };
      });
    }
  }
}

function placeIn(length: number, thousandths: number): number {
  return Math.floor((length * thousandths) / 999);
}

async function compare(desk: ReturnType<typeof createDesk>, when: string, phonics: Phonics): Promise<void> {
  const fresh = createDesk(phonics, desk.sequence(), unchanging(phonics, desk.sequence()));
  fresh.open(desk.text());
  const [found, expected] = [
    told(await desk.analyse(), desk.pages),
    told(await fresh.analyse(), fresh.pages),
  ];
  for (const [what, value] of Object.entries(expected)) {
    const [left, right] = [JSON.stringify(found[what]), JSON.stringify(value)];
    if (left === right) continue;
    let at = 0;
    while (left?.[at] === right?.[at]) at++;
    const near = (json: string | undefined) => (json ?? 'nothing').slice(Math.max(0, at - 80), at + 120);
    throw new Error(
      `After ${when}: ${what} differ.\nfrom version to version: …${near(left)}\nfrom scratch: …${near(right)}\ntext: ${JSON.stringify(desk.text())}`,
    );
  }
}

/**
 * Each of `sequenceTexts`, read once a run for all stories that are seen for the first time; the editor that goes on from
 * version to version has its own and reads them again after each change.
 */
const readOnce = new Map<number, SequenceFiles>();

function unchanging(phonics: Phonics, number: number): SequenceFiles {
  const known = readOnce.get(number);
  if (known !== undefined) return known;
  const files = createSequenceFiles({
    phonics,
    open: () => undefined,
    read: async (uri) => (uri === sequenceUri ? (sequenceTexts[number] ?? null) : null),
  });
  readOnce.set(number, files);
  return files;
}

/** All that is ever shown of an analysis, as plain data: findings and their ranges, figures, pages, words, the gauge. */
function told(analysis: Analysis, pages: PageDiagnostics): Readonly<Record<string, unknown>> {
  const { content, named, snapshot } = analysis;
  const gauge = gaugeParamsOf({ ...analysis, snapshot: { ...snapshot } });
  const shown = {
    findings: findingsOf(content),
    named,
    diagnostics: shownOf(analysis, undefined, pages).diagnostics(),
    gauge: gauge && {
      ...gauge,
      version: 0,
      ...('gauge' in gauge && { gauge: { ...gauge.gauge, version: 0 } }),
    },
  };
  if (content.kind !== 'reviewed') {
    return {
      ...shown,
      kind: content.kind,
      story: content.kind === 'not-reviewed' ? content.story : undefined,
    };
  }
  const { review } = content;
  return {
    ...shown,
    story: review.story,
    figures: {
      counts: review.counts,
      shares: [review.readable, review.decodable, review.target],
      passes: review.passes,
      practice: review.practice,
    },
    title: review.title.map(plainWord),
    pages: review.pages.map(({ placed, reviewed }) => ({
      start: placed.start,
      number: placed.number,
      counts: reviewed.counts,
      findings: reviewed.findings,
      practice: reviewed.uses.practice,
      newWords: reviewed.uses.newWords,
      newSpellings: reviewed.uses.newSpellings,
      storyWords: [...reviewed.uses.storyWords],
      words: reviewed.words.map(plainWord),
    })),
    newWordUses: review.newWordUses,
    newSpellingUses: review.newSpellingUses.map(({ spelling, spans }) => [spelling.line.letters, spans]),
  };
}

type Told = Extract<Analysis['content'], { kind: 'reviewed' }>['review']['title'][number];

function plainWord({ word, kind, isNew, reading, missing, newSpellings }: Told): unknown {
  return {
    word,
    kind,
    isNew,
    parts: reading?.parts.map(({ letters, sounds }) => [letters, sounds]),
    missing: missing.map((lack) => ({ ...lack, lesson: lack.lesson?.name })),
    newSpellings: newSpellings.map(({ line }) => line.letters),
  };
}
