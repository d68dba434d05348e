import { type DocumentSymbol, SymbolKind } from 'vscode-languageserver';
import type { Story } from '../story/story.ts';
import { type Span, shifted } from '../text/span.ts';
import type { Analysis } from './analysis.ts';
import { storyOf } from './analysis.ts';
import { rangeOf } from './diagnostics.ts';
import type { Snapshot } from './documents.ts';
import type { SequenceFile } from './sequence-files.ts';

/** The outline of a story (title, pages, their sentences) or of a sequence (lessons, what each teaches). */
export function outlineOf({ snapshot, content }: Analysis): DocumentSymbol[] {
  if (content.kind === 'sequence') {
    return content.sequenceFile === undefined ? [] : sequenceOutline(content.sequenceFile);
  }
  const story = storyOf(content);
  return story?.isStory ? storyOutline(snapshot, story) : [];
}

function storyOutline(snapshot: Snapshot, { title, pages }: Story): DocumentSymbol[] {
  const symbols: DocumentSymbol[] = [];
  if (title !== undefined) symbols.push(symbol(snapshot, title.text, SymbolKind.String, title.span));
  for (const { page, number, start } of pages) {
    const span = { start, end: start + page.source.length };
    const first = page.sentences[0]?.span ?? page.illustrations[0]?.span;
    const note = page.illustrations.map((illustration) => illustration.note).join('; ');
    symbols.push({
      ...symbol(snapshot, `Page ${number}`, SymbolKind.Module, span, first && shifted(first, start)),
      ...(note === '' ? {} : { detail: shortened(note) }),
      children: page.sentences.map((sentence) =>
        symbol(snapshot, sentence.text, SymbolKind.String, shifted(sentence.span, start)),
      ),
    });
  }
  return symbols;
}

function sequenceOutline({ snapshot, teaching }: SequenceFile): DocumentSymbol[] {
  return teaching.sequence.lessons.map((lesson) => ({
    ...symbol(snapshot, `Lesson ${lesson.name}`, SymbolKind.Module, lesson.span, lesson.nameSpan),
    ...(lesson.title === undefined ? {} : { detail: shortened(lesson.title) }),
    children: [
      ...lesson.spellings.map(({ value, span }) =>
        symbol(snapshot, `${value.letters} as in ${value.keyWord}`, SymbolKind.Key, span),
      ),
      ...lesson.highFrequencyWords.map(({ value, span }) => symbol(snapshot, value, SymbolKind.String, span)),
    ].sort((one, other) => one.range.start.line - other.range.start.line),
  }));
}

function symbol(
  snapshot: Snapshot,
  name: string,
  kind: SymbolKind,
  span: Span,
  selection: Span = span,
): DocumentSymbol {
  const isWithin = span.start <= selection.start && selection.end <= span.end;
  return {
    // Clients refuse a name without a visible sign.
    name: shortened(name) || '…',
    kind,
    range: rangeOf(snapshot, span),
    selectionRange: rangeOf(snapshot, isWithin ? selection : span),
  };
}

/** UTF-16 code units of a name in the outline. */
const longestName = 120;

function shortened(text: string): string {
  const folded = text.replace(/\s+/g, ' ').trim();
  return folded.length > longestName ? `${folded.slice(0, longestName)}…` : folded;
}
