/** Everything the server answers, and some it does not. */
export const requestMethods: readonly string[] = [
  'textDocument/hover',
  'textDocument/completion',
  'textDocument/documentSymbol',
  'textDocument/definition',
  'textDocument/codeAction',
  'textDocument/diagnostic',
  'battledore/sequence',
  'battledore/words',
  'battledore/chain',
  'battledore/fit',
  'battledore/print',
  'battledore/checkStories',
  'battledore/whatIf',
  'textDocument/rename',
];

/**
 * Parameters of wrong kinds for any method. Those that name a document name the given one, which nobody has to answer
 * for afterwards.
 */
export function malformedParams(uri: string): readonly unknown[] {
  const position = { line: 0, character: 0 };
  const range = { start: position, end: position };
  return [
    null,
    undefined,
    [],
    {},
    { textDocument: null },
    { textDocument: {} },
    { textDocument: { uri: 7 } },
    { textDocument: { uri: '' } },
    { textDocument: { uri: ':::' } },
    { textDocument: { uri: 'file:///%E0%A4%A' } },
    { textDocument: { uri }, position: null },
    { textDocument: { uri }, position: { line: -1, character: -1 } },
    { textDocument: { uri }, position: { line: 1e9, character: 1e9 } },
    { textDocument: { uri }, position: { line: 0.5, character: 'a' } },
    { textDocument: { uri }, range: null, context: null },
    { textDocument: { uri }, range, context: { diagnostics: 'all' } },
    { textDocument: { uri }, range: { start: { line: 9, character: 9 }, end: position }, context: {} },
    { textDocument: { uri, languageId: 'markdown', version: 1, text: '---\nlesson: "2"\n---\nNight.\n' } },
    { textDocument: { uri, languageId: 'markdown', version: 1 } },
    { textDocument: { uri, languageId: 7, version: 'one', text: { a: 1 } } },
    { textDocument: { uri, version: 2 }, contentChanges: null },
    { textDocument: { uri, version: 2 }, contentChanges: [null] },
    { textDocument: { uri, version: null }, contentChanges: [{}] },
    { textDocument: { uri, version: 2 }, contentChanges: [{ text: 7 }] },
    { textDocument: { uri, version: 2 }, contentChanges: [{ range: {}, text: 'a' }] },
    {
      textDocument: { uri, version: 3 },
      contentChanges: [
        { range: { start: { line: 5, character: 1 }, end: { line: -4, character: 0 } }, text: 'x' },
      ],
    },
    { changes: null },
    { changes: [null] },
    { changes: [{ uri: 5, type: 'x' }] },
    { id: 'none' },
    { uri, length: 1e9, seed: 'a', start: {} },
    { uri, text: 9 },
    { uri, text: 'The map.', paper: 'none', material: 'gold', layout: null, parts: 'all' },
    { uri: null, sequenceUri: {}, show: 'perhaps' },
    'a text',
    42,
  ];
}
