import type { Finding, RuleId } from './review.ts';

/**
 * How serious the findings of each rule are, decided here for all of them. The problems of the files bring their own
 * severity (`as found`): a line that cannot be used is an error, one that is only odd a warning.
 */
const severities: Readonly<Record<RuleId, Finding['severity'] | 'as found'>> = {
  'untaught-spelling': 'warning',
  'untaught-form': 'warning',
  'guessed-reading': 'information',
  'long-sentence': 'warning',
  'long-page': 'warning',
  'missing-high-frequency-word': 'warning',
  'little-practice': 'warning',
  'too-many-story-words': 'warning',
  'unused-story-word': 'information',
  'untaught-punctuation': 'warning',
  'under-target': 'warning',
  'sequence-problem': 'as found',
  'front-matter-problem': 'as found',
};

/** Rules whose single findings a passing story may have, since the readable target weighs them together. */
const weighedTogether: ReadonlySet<RuleId> = new Set<RuleId>(['untaught-spelling', 'untaught-form']);

/** The severity of a rule's finding; `found` is the severity of the problem it passes on, where it does. */
export function severityOf(rule: RuleId, found: Finding['severity'] = 'warning'): Finding['severity'] {
  const severity = severities[rule];
  return severity === 'as found' ? found : severity;
}

/** True when a finding alone keeps a story from passing: it is more than information and no target weighs it. */
export function failsStory({ rule, severity }: Finding): boolean {
  return severity !== 'information' && !weighedTogether.has(rule);
}
