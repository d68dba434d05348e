import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import { lessonLabel } from '../review/wording.ts';
import { frontMatterKeys } from '../story/front-matter-block.ts';
import type { Analysis } from './analysis.ts';
import { linesBefore, longestLine } from './lines-before.ts';

/** What may stand in a story's front matter at an offset: keys at the start of a line, lessons behind `lesson:`. */
export function frontMatterCompletions({ content, snapshot }: Analysis, offset: number): CompletionItem[] {
  const text = snapshot.document.getText();
  const line = linesBefore(snapshot, offset).at(-1) ?? '';
  if (line.length > longestLine) return [];
  if (/^lesson:\s*"?[^"]*$/.test(line)) {
    const sequenceFile = content.kind === 'sequence' ? undefined : content.sequenceFile;
    const isQuoted = line.includes('"');
    return (sequenceFile?.teaching.sequence.lessons ?? []).map((lesson, index) => ({
      label: lesson.name,
      kind: CompletionItemKind.EnumMember,
      detail: lesson.title ?? lessonLabel(lesson),
      sortText: String(index).padStart(4, '0'),
      insertText: isQuoted ? lesson.name : `"${lesson.name}"`,
    }));
  }
  if (!/^[a-z ]*$/i.test(line)) return [];
  const present = new Set(
    Array.from(text.slice(0, offset + 2000).matchAll(/^([a-z ]+):/gm), (match) => match[1]),
  );
  return frontMatterKeys
    .filter((key) => !present.has(key))
    .map((key) => ({ label: key, kind: CompletionItemKind.Property, insertText: `${key}: ` }));
}
