import { shownPercent } from '../review/figures.ts';
import type { Review, RuleId } from '../review/review.ts';
import { failsStory } from '../review/severity.ts';

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

/** What a standing falls short of, in few words: `94.1 % readable, target 95 %, long-sentence 3 times`. */
export function shortfall({
  failing,
  readable,
  target,
}: Pick<Standing, 'failing' | 'readable' | 'target'>): string {
  return failing
    .map(({ rule, count }) => {
      if (rule === 'under-target') {
        return `${shownPercent(readable)} % readable, target ${Math.round(target * 10_000) / 100} %`;
      }
      return count === 1 ? rule : `${rule} ${times(count)}`;
    })
    .join(', ');
}

/** `once`, `twice`, `3 times`. */
export function times(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}
