import { isNothing, type YamlNode } from '../yaml/yaml-node.ts';
import type { SeriesLimits } from './sequence.ts';
import type { FieldReader } from './yaml-fields.ts';

/** The limits of a sequence that sets none. */
export const defaultLimits: SeriesLimits = { againWithin: 3, unseenFor: 5, metAtLeast: 2 };

/** The limits that the map `series` of the file sets; a bad figure is reported and has its default. */
export function readLimits(node: YamlNode | null, fields: FieldReader): SeriesLimits {
  const limits: { -readonly [Name in keyof SeriesLimits]: number } = { ...defaultLimits };
  if (isNothing(node)) return limits;
  const given = fields.fieldsOf(
    node,
    'series',
    limitKeys.map(({ key }) => key),
  );
  for (const { key, name } of limitKeys) {
    const written = fields.textOf(given?.get(key));
    if (written === undefined) continue;
    const figure = /^\d+$/.test(written.value) ? Number(written.value) : 0;
    if (figure >= 1 && figure <= most) {
      limits[name] = figure;
    } else {
      fields.report(`“${key}” is a whole number from 1 to ${most}, not “${written.value}”.`, written.span);
    }
  }
  return limits;
}

/** Only catches slips. */
const most = 1000;

const limitKeys = [
  { key: 'again within', name: 'againWithin' },
  { key: 'unseen for', name: 'unseenFor' },
  { key: 'met at least', name: 'metAtLeast' },
] as const;
