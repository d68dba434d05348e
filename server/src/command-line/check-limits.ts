import { counted } from '../review/wording.ts';
import type { CheckedStory } from './check-story.ts';
import type { Call, CommandOption } from './command.ts';
import { readCount } from './count-option.ts';

/** How much may be wrong before `check` ends with code 1; what is not given is not limited, but for stories: none may fall short. */
export interface CheckLimits {
  /** Stories that fall short. */
  readonly short: number;
  /** Findings that are errors or warnings, in all stories together. */
  readonly warnings?: number;
  /** Not-taught running words of a story. */
  readonly notTaught?: number;
}

/** The options that set limits. */
export const limitOptions: readonly CommandOption[] = [
  { name: 'max-short', value: 'COUNT', description: 'so many stories may fall short (0)' },
  {
    name: 'max-warnings',
    value: 'COUNT',
    description: 'errors and warnings at most, in all stories together',
  },
  { name: 'max-not-taught', value: 'COUNT', description: 'not-taught running words a story, at most' },
];

/** Reads the limits of a call, or says which is no number. */
export function readCheckLimits(
  options: Call['options'],
): CheckLimits | { readonly option: string; readonly message: string } {
  const counts = new Map<string, number>();
  for (const { name } of limitOptions) {
    const count = readCount(options, name);
    if (typeof count === 'object') return { option: `--${name}`, message: count.message };
    if (count !== undefined) counts.set(name, count);
  }
  const warnings = counts.get('max-warnings');
  const notTaught = counts.get('max-not-taught');
  return {
    short: counts.get('max-short') ?? 0,
    ...(warnings === undefined ? {} : { warnings }),
    ...(notTaught === undefined ? {} : { notTaught }),
  };
}

/** What goes past the limits, as lines for the error output; none when the run is well. */
export function pastLimits(stories: readonly CheckedStory[], limits: CheckLimits): readonly string[] {
  const past: string[] = [];
  const short = stories.filter(({ review }) => !review.passes).length;
  if (short > limits.short && limits.short > 0) {
    past.push(`${counted(short, 'story falls', 'stories fall')} short; --max-short allows ${limits.short}.`);
  }
  const warnings = stories.reduce(
    (sum, { review }) => sum + review.findings.filter(({ severity }) => severity !== 'information').length,
    0,
  );
  if (limits.warnings !== undefined && warnings > limits.warnings) {
    past.push(
      `${counted(warnings, 'error or warning', 'errors and warnings')}; --max-warnings allows ${limits.warnings}.`,
    );
  }
  for (const { path, review } of stories) {
    const notTaught = review.counts['not-taught'];
    if (limits.notTaught !== undefined && notTaught > limits.notTaught) {
      past.push(
        `${path}  ${counted(notTaught, 'not-taught word')}; --max-not-taught allows ${limits.notTaught}.`,
      );
    }
  }
  return past;
}

/** True when a run ends with code 0. */
export function isWithin(stories: readonly CheckedStory[], limits: CheckLimits): boolean {
  const short = stories.filter(({ review }) => !review.passes).length;
  return short <= limits.short && pastLimits(stories, limits).length === 0;
}
