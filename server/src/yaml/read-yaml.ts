import { placeTooDeep } from './nesting.ts';
import { type ParsedYaml, parseYaml } from './parse-yaml.ts';
import { parsePlainYaml } from './plain-yaml.ts';

/** What a text of YAML holds: read at once when it is plain, by the library otherwise, and not at all when it is too deep. */
export function readYamlNodes(text: string): ParsedYaml {
  const contents = parsePlainYaml(text);
  if (contents !== undefined) return { contents, errors: [], warnings: [] };
  const deep = placeTooDeep(text);
  return deep === undefined ? parseYaml(text) : { contents: null, errors: [tooDeepAt(deep)], warnings: [] };
}

function tooDeepAt(place: number): ParsedYaml['errors'][number] {
  return {
    code: 'RESOURCE_EXHAUSTION',
    message: 'Nested too deeply',
    span: { start: place, end: place + 1 },
  };
}
