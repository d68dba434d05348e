// A markdown linter on unified, by the language server of that project.
import { remark } from 'remark';
import remarkPresetLintRecommended from 'remark-preset-lint-recommended';
import { createUnifiedLanguageServer } from 'unified-language-server';

createUnifiedLanguageServer({
  configurationSection: 'remark',
  defaultProcessor: remark().use(remarkPresetLintRecommended),
  processorName: 'remark',
  processorSpecifier: 'remark',
  plugins: [remarkPresetLintRecommended],
});
