import { type ParsedYaml, parseYaml } from './parse-yaml.ts';
import { parsePlainYaml } from './plain-yaml.ts';

/** What a text of YAML holds: read at once when it is plain, by the library otherwise. */
export function readYamlNodes(text: string): ParsedYaml {
  const contents = parsePlainYaml(text);
  return contents === undefined ? parseYaml(text) : { contents, errors: [], warnings: [] };
}
