import { shownPercent } from '../review/figures.ts';
import type { Review, RuleId } from '../review/review.ts';
import { failsStory } from '../review/severity.ts';
import { counted } from '../review/wording.ts';

/** How a story stands at its lesson of a sequence, without text or messages: small enough to keep for a thousand stories. */
export interface Standing {
  /** The name of its lesson. */
  readonly lesson: string;
  readonly passes: boolean;
  /** Shares from 0 to 1. */
  readonly readable: number;
  readonly target: number;
  /** The rules that keep it from passing, each with the number of its findings, in the order of the text. */
  readonly failing: readonly { readonly rule: RuleId; readonly count: number }[];
}

/** Reads the standing off a review. */
export function standingOf({ taught, passes, readable, target, findings }: Review): Standing {
  const failing = new Map<RuleId, number>();
  for (const finding of findings) {
    if (failsStory(finding)) failing.set(finding.rule, (failing.get(finding.rule) ?? 0) + 1);
  }
  return {
    lesson: taught.lesson.name,
    passes,
    readable,
    target,
    failing: [...failing].map(([rule, count]) => ({ rule, count })),
  };
}

/** What a standing falls short of, in few words: `94.1 % readable, target 95 %; 3 sentences too long`. */
export function shortfall({
  failing,
  readable,
  target,
}: Pick<Standing, 'failing' | 'readable' | 'target'>): string {
  return failing
    .map(({ rule, count }) =>
      rule === 'under-target'
        ? `${shownPercent(readable)} % readable, target ${Math.round(target * 10_000) / 100} %`
        : shortfalls[rule](count),
    )
    .join('; ');
}

/** `once`, `twice`, `3 times`. */
export function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}

const shortfalls: Readonly<Record<Exclude<RuleId, 'under-target'>, (count: number) => string>> = {
  'untaught-spelling': (count) => `${counted(count, 'word')} with an untaught spelling`,
  'untaught-form': (count) => `${counted(count, 'word')} of an untaught form`,
  'guessed-reading': (count) => `${counted(count, 'word')} read by rule`,
  'long-sentence': (count) => `${counted(count, 'sentence')} too long`,
  'long-page': (count) => `${counted(count, 'page')} too long`,
  'missing-high-frequency-word': (count) =>
    `${counted(count, 'new high-frequency word')} missing or too seldom`,
  'little-practice': () => 'little practice of new spellings',
  'too-many-story-words': () => 'too many story words',
  'unused-story-word': (count) => `${counted(count, 'story word')} not used`,
  'untaught-punctuation': (count) => `${counted(count, 'mark')} not introduced`,
  'sequence-problem': (count) => `${counted(count, 'problem')} of its sequence`,
  'front-matter-problem': (count) => `${counted(count, 'problem')} in its front matter`,
};
