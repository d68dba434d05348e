import {
  type DocumentSymbol,
  type Hover,
  type Location,
  type LocationLink,
  MarkupKind,
  type Position,
  SymbolInformation,
} from 'vscode-languageserver';
import type { Analysis } from './analysis.ts';
import { definitionsAt } from './definition.ts';
import { rangeOf } from './diagnostics.ts';
import { type HoverKnowledge, hoverAt } from './hover.ts';
import { outlineOf } from './outline.ts';
import type { Settings } from './protocol.ts';
import { markdown, plainText } from './rich-text.ts';

/** A hover in the form the client shows. */
export function hoverAnswer(
  analysis: Analysis,
  position: Position,
  knowledge: HoverKnowledge,
  { sounds, asMarkdown }: { sounds: Settings['sounds']; asMarkdown: boolean },
): Hover | null {
  const { document } = analysis.snapshot;
  const hover = hoverAt(analysis, document.offsetAt(position), knowledge, sounds);
  if (hover === undefined) return null;
  return {
    contents: asMarkdown
      ? { kind: MarkupKind.Markdown, value: markdown(hover.blocks) }
      : { kind: MarkupKind.PlainText, value: plainText(hover.blocks) },
    range: rangeOf(analysis.snapshot, hover.span),
  };
}

/** The outline as a tree, or flat for a client that takes no trees. */
export function outlineAnswer(analysis: Analysis, asTree: boolean): DocumentSymbol[] | SymbolInformation[] {
  const tree = outlineOf(analysis);
  return asTree ? tree : flattened(tree, analysis.snapshot.uri);
}

/** Where to go, as links or as plain places. */
export function definitionAnswer(
  analysis: Analysis,
  position: Position,
  asLinks: boolean,
): LocationLink[] | Location[] {
  const links = definitionsAt(analysis, analysis.snapshot.document.offsetAt(position));
  return asLinks
    ? links
    : links.map(({ targetUri, targetSelectionRange }) => ({ uri: targetUri, range: targetSelectionRange }));
}

function flattened(symbols: readonly DocumentSymbol[], uri: string, container?: string): SymbolInformation[] {
  return symbols.flatMap(({ name, kind, range, children }) => [
    SymbolInformation.create(name, kind, range, uri, container),
    ...flattened(children ?? [], uri, name),
  ]);
}
