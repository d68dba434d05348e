import { describe, expect, it } from 'vitest';
import { sequenceFindings } from '../../../server/src/review/findings.ts';
import { ruleIds } from '../../../server/src/review/review.ts';
import { ruleOf, rules } from '../../../server/src/review/rules/registry.ts';
import type { RuleExample } from '../../../server/src/review/rules/rule.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { markedText, withMarks } from '../../support/marked-text.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { reviewed } from '../../support/reviewed.ts';

describe('the registry', () => {
  it('has every rule of the design, in its order', () => {
    expect(rules.map(({ id }) => id)).toEqual([...ruleIds]);
    for (const id of ruleIds) expect(ruleOf(id)?.id).toBe(id);
  });
});

for (const rule of rules) {
  describe(rule.id, () => {
    it('is described in one line and documented in five parts', () => {
      expect(rule.description).toMatch(/^[A-Z][^\n]+\.$/);
      const { triggers, bad, good, options, rationale } = rule.documentation;
      for (const part of [triggers, options, rationale]) expect(part).toMatch(/^[A-Z`].*\.$/);
      expect(markCount(bad), 'the bad example shows a finding').toBeGreaterThan(0);
      expect(markCount(good), 'the good example shows none').toBe(0);
    });
    const { bad, good } = rule.documentation;
    for (const [index, example] of [bad, good, ...rule.examples].entries()) {
      const name = ['finds what the bad example marks', 'finds nothing in the good example'][index];
      it(name ?? `agrees with its further example ${index - 1}`, () => agrees(rule.id, example));
    }
  });
}

function markCount({ sequence, story }: RuleExample): number {
  return markedText(sequence).spans.length + markedText(story).spans.length;
}

/** The rule's findings stand exactly where the example marks them, and say what it says. */
function agrees(rule: string, example: RuleExample): void {
  const sequence = markedText(example.sequence).text;
  const story = markedText(example.story).text;
  const inStory = reviewed(story, sequence, packagePhonics).findings.filter((found) => found.rule === rule);
  const problems = teachingOf(readSequence(sequence), packagePhonics).problems;
  const inSequence = sequenceFindings(problems).filter((found) => found.rule === rule);
  expect(
    withMarks(
      story,
      inStory.map(({ span }) => span),
    ),
  ).toBe(example.story);
  expect(
    withMarks(
      sequence,
      inSequence.map(({ span }) => span),
    ),
  ).toBe(example.sequence);
  if (example.messages !== undefined) {
    expect([...inSequence, ...inStory].map(({ message }) => message)).toEqual(example.messages);
  }
}
