import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import type { Phonics } from '../phonics/phonics.ts';
import { endings } from '../phonics/reading.ts';
import { lessonKeys } from '../sequence/read-lesson.ts';
import { sequenceKeys } from '../sequence/read-sequence.ts';
import { blends, type Sequence } from '../sequence/sequence.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Analysis } from './analysis.ts';
import { linesBefore, longestLine } from './lines-before.ts';

/** What may stand in a sequence at an offset: keys, and behind a key what it lists and no lesson teaches yet. */
export function sequenceCompletions(
  { content, snapshot }: Analysis,
  offset: number,
  phonics: Phonics,
): CompletionItem[] {
  if (content.kind !== 'sequence' || content.sequenceFile === undefined) return [];
  const { sequence } = content.sequenceFile.teaching;
  const lines = linesBefore(snapshot, offset);
  const line = lines.at(-1) ?? '';
  if (line.length > longestLine) return [];
  const item = /^\s*- ([^:]*)$/.exec(line);
  const list = item && listKeyAbove(lines);
  if (item && list !== null && list !== undefined) return listItems(list, item[1] ?? '', sequence, phonics);
  if (/^\s*(- )?[a-z -]*$/i.test(line)) return keyItems(line);
  const flow = /^\s*(?:- )?([a-z -]+):\s*\[(.*)$/i.exec(line);
  if (flow?.[1] === undefined) return [];
  const typed = (flow[2] ?? '').split(',').at(-1) ?? '';
  const items = listItems(flow[1], typed.trimStart(), sequence, phonics);
  // A list without its closing bracket is not read yet: what stands in it is not offered either.
  const present = new Set((flow[2] ?? '').split(',').map((each) => each.trim()));
  return items.filter(({ label }) => !present.has(label));
}

/** The key whose block list the last line stands in; undefined in a lesson's own line. */
function listKeyAbove(lines: readonly string[]): string | undefined {
  for (const line of [...lines.slice(0, -1)].reverse()) {
    if (line.length > longestLine) continue;
    const key = /^\s*(?:- )?([a-z -]+):\s*(.*)$/i.exec(line);
    if (key !== null) return key[2] === '' && key[1] !== 'lessons' ? key[1] : undefined;
  }
  return undefined;
}

function keyItems(line: string): CompletionItem[] {
  const keys: readonly string[] = /^\s/.test(line) ? lessonKeys : sequenceKeys;
  return keys.map((key) => ({ label: key, kind: CompletionItemKind.Property, insertText: `${key}: ` }));
}

function listItems(key: string, typed: string, sequence: Sequence, phonics: Phonics): CompletionItem[] {
  const value = (label: string): CompletionItem => ({ label, kind: CompletionItemKind.Value });
  const { lessons } = sequence;
  switch (key.trim()) {
    case 'spellings': {
      const taught = new Set(
        lessons.flatMap(({ spellings }) =>
          spellings.map((each) => `${each.value.letters} as in ${each.value.keyWord}`),
        ),
      );
      return phonics
        .commonSpellings()
        .map(({ letters, keyWord }) => `${letters} as in ${keyWord}`)
        .filter((spelling) => !taught.has(spelling))
        .map((spelling) => ({ ...value(spelling), filterText: spelling }));
    }
    case 'high-frequency words': {
      if (typed === '') return [];
      const taught = new Set(
        lessons.flatMap(({ highFrequencyWords }) => highFrequencyWords.map((each) => foldedWord(each.value))),
      );
      const words = phonics.words
        .startingWith(typed, mostWords + taught.size)
        .filter(({ word }) => !taught.has(word))
        .slice(0, mostWords);
      return words.map(({ word }, index) => ({
        ...value(word === 'i' ? 'I' : word),
        sortText: String(index).padStart(4, '0'),
      }));
    }
    case 'endings': {
      const open = new Set(lessons.flatMap((lesson) => lesson.endings.map((each) => each.value)));
      return endings
        .filter((ending) => !open.has(ending))
        .map((ending) => value(ending.startsWith("'") ? `"${ending}"` : ending));
    }
    case 'blends': {
      const open = new Set(lessons.flatMap((lesson) => lesson.blends.map((each) => each.value)));
      return blends.filter((blend) => !open.has(blend)).map(value);
    }
    default:
      return [];
  }
}

const mostWords = 40;
