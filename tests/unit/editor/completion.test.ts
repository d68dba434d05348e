import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../../server/src/editor/analysis.ts';
import { createCompleter } from '../../../server/src/editor/completion.ts';
import { snapshotOf } from '../../../server/src/editor/documents.ts';
import { reviewStory } from '../../../server/src/review/review-story.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { createWordFinders } from '../../../server/src/words/word-finders.ts';
import { phonics } from '../../support/reads.ts';

const samples = readFileSync(new URL('../../../samples/sequence.yaml', import.meta.url), 'utf8');
const completer = createCompleter(phonics, createWordFinders(phonics));

/** What is offered at the bar of a text. */
function typing(marked: string) {
  const offered = (lesson: string): readonly string[] => {
    const head = `---\nlesson: "${lesson}"\n---\n`;
    return offersAt(marked.startsWith('---') ? marked : head + marked);
  };
  return {
    at: (lesson: string) => ({
      offers: (...words: string[]) => expect(offered(lesson)).toEqual(expect.arrayContaining(words)),
      begins: (...words: string[]) => expect(offered(lesson).slice(0, words.length)).toEqual(words),
      offersNothing: () => expect(offered(lesson)).toEqual([]),
      never: (...words: string[]) => {
        for (const word of words) expect(offered(lesson)).not.toContain(word);
      },
    }),
  };
}

function offersAt(marked: string): readonly string[] {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const snapshot = snapshotOf('file:///lane/a.md', 'markdown', 1, text);
  const sequenceSnapshot = snapshotOf('file:///lane/sequence.yaml', 'yaml', 1, samples);
  const teaching = teachingOf(readSequence(samples), phonics);
  const story = readStory(text);
  const taught = teaching.taughtAt(story.frontMatter.lesson?.value ?? '');
  const sequenceFile = { snapshot: sequenceSnapshot, teaching };
  const content: Analysis['content'] = taught
    ? { kind: 'reviewed', review: reviewStory({ story, taught, phonics }), sequenceFile }
    : { kind: 'not-reviewed', reason: 'no-such-lesson', message: '', story, sequenceFile, findings: [] };
  const analysis = { id: 1, snapshot, content };
  return completer
    .completionsAt(analysis, snapshot.document.positionAt(offset), 'dictionary')
    .items.map(({ label }) => label);
}

function offersInSequence(marked: string): readonly string[] {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const snapshot = snapshotOf('file:///lane/sequence.yaml', 'yaml', 1, text);
  const teaching = teachingOf(readSequence(text), phonics);
  const content: Analysis['content'] = {
    kind: 'sequence',
    sequenceFile: { snapshot, teaching },
    findings: [],
  };
  const analysis = { id: 1, snapshot, content };
  return completer
    .completionsAt(analysis, snapshot.document.positionAt(offset), 'dictionary')
    .items.map(({ label }) => label);
}

describe('while a story is written', () => {
  it('readable words of the lesson are offered', () => {
    typing('Nod saw a sh|').at('15').offers('ship', 'shop', 'shed');
    typing('Nod saw a sh|').at('15').never('shark', 'sheep', 'shell-shock');
    typing('Sh|').at('15').offers('Ship');
  });

  it('missing high-frequency words come first, then words that practise what is new', () => {
    typing('Nod can w|').at('14').begins('want');
    typing('Nod can th|').at('14').begins('thing');
  });

  it('nothing that is unfit is offered', () => {
    typing('Nod has a g|').at('14').never('gun', 'guns');
  });

  it.each(['> Ask: What sh|', '![A sh|]()\nNod ran.', '`sh|`', 'Nod ran. <!-- sh| -->', 'Nod ran. |'])(
    'never in %s',
    (text) => typing(text).at('15').offersNothing(),
  );
});

describe('in the front matter', () => {
  it('keys that are not there yet', () => {
    expect(offersAt('---\nlesson: "4"\n|\n---\nNod.\n')).toEqual([
      'title',
      'sequence',
      'names',
      'story words',
      'pronunciations',
    ]);
  });
  it('the lessons of the sequence', () => {
    expect(offersAt('---\nlesson: |\n---\nNod.\n')).toContain('14');
  });
});

describe('in a sequence', () => {
  const lesson = 'lessons:\n  - name: "1"\n    spellings: [m as in mud]\n';
  it.each([
    [`${lesson}    blends: [|`, 'start'],
    [`${lesson}    endings: [s, |`, 'ing'],
    [`${lesson}    high-frequency words: [sa|`, 'said'],
    [`${lesson}    |`, 'blends'],
    ['lessons:\n  - name: "1"\n    spellings: [|', 'igh as in light'],
    ['lessons:\n  - name: "1"\n    spellings:\n      - m as in mud\n      - |', 'sh as in ship'],
    ['|', 'lessons'],
  ])('%j offers %s', (text, label) => expect(offersInSequence(text)).toContain(label));

  it('what is taught already is not offered again', () => {
    expect(offersInSequence('lessons:\n  - name: "1"\n    spellings: [sh as in ship, |')).not.toContain(
      'sh as in ship',
    );
  });
});
