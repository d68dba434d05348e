import { isNothing, type YamlNode } from '../yaml/yaml-node.ts';
import type { Targets } from './sequence.ts';
import type { FieldReader } from './yaml-fields.ts';

/** The targets of a sequence that sets none: the figures of the design's example. */
export const defaultTargets: Targets = {
  readable: 95,
  sentence: 7,
  page: 20,
  practice: 8,
  repeats: 3,
  storyWords: 3,
};

/** The targets that a map of the file sets; a bad figure is reported and left out. */
export function readTargets(node: YamlNode | null, fields: FieldReader): Partial<Targets> {
  const targets: { -readonly [Name in keyof Targets]?: number } = {};
  if (isNothing(node)) {
    return targets;
  }
  const given = fields.fieldsOf(
    node,
    'targets',
    targetLimits.map(({ key }) => key),
  );
  for (const { key, name, least, most, whole } of targetLimits) {
    const written = fields.textOf(given?.get(key));
    if (written === undefined) {
      continue;
    }
    const figure = /^\d+(?:\.\d+)?$/.test(written.value) ? Number(written.value) : Number.NaN;
    if (figure >= least && figure <= most && (!whole || Number.isInteger(figure))) {
      targets[name] = figure;
    } else {
      const kind = whole ? 'a whole number' : 'a percentage';
      fields.report(`“${key}” is ${kind} from ${least} to ${most}, not “${written.value}”.`, written.span);
    }
  }
  return targets;
}

/** The keys of `targets` with what their figures may be. The upper limits only catch slips. */
const targetLimits = [
  { key: 'readable', name: 'readable', least: 0, most: 100, whole: false },
  { key: 'sentence', name: 'sentence', least: 1, most: 1000, whole: true },
  { key: 'page', name: 'page', least: 1, most: 10000, whole: true },
  { key: 'practice', name: 'practice', least: 0, most: 1000, whole: true },
  { key: 'repeats', name: 'repeats', least: 0, most: 1000, whole: true },
  { key: 'story words', name: 'storyWords', least: 0, most: 1000, whole: true },
] as const;
