import type { Page } from '../story/story.ts';
import type { Problem } from '../text/problem.ts';
import type { Finding, ReviewedWord, WordNote } from './review.ts';
import type { ReviewContext } from './review-context.ts';
import { isMemorable } from './review-word.ts';
import { frontMatterProblem } from './rules/front-matter-problem.ts';
import { rules } from './rules/registry.ts';
import type { Found, ProblemRule, Rule, StoryFigures } from './rules/rule.ts';
import { sequenceProblem } from './rules/sequence-problem.ts';
import { severityOf } from './severity.ts';

/** What the rules for words find; spans as the words have them. */
export function wordFindings(words: readonly ReviewedWord[], context: ReviewContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const reviewed of words) {
    const { span } = reviewed.word;
    for (const { rule, severity, message } of notesOn(reviewed, context)) {
      findings.push({ rule, severity, span, message });
    }
  }
  return findings;
}

function notesOn(reviewed: ReviewedWord, context: ReviewContext): readonly WordNote[] {
  const { word } = reviewed;
  const { notes } = context.known;
  const known = notes.get(word.text);
  if (known !== undefined && word.form === 'word' && !context.declared.mentions(word.text)) return known;
  const made = madeNotes(reviewed, context);
  if (isMemorable(word, context)) notes.set(word.text, made);
  return made;
}

function madeNotes(reviewed: ReviewedWord, context: ReviewContext): readonly WordNote[] {
  return wordRules.flatMap((rule) => {
    const message = rule.check(reviewed, context);
    return message === undefined ? [] : [{ rule: rule.id, severity: severityOf(rule.id), message }];
  });
}

const wordRules = rules.filter((rule) => rule.looksAt === 'word');

/** What the rules for pages find; spans relative to the page. */
export function pageFindings(page: Page, { taught }: ReviewContext): readonly Finding[] {
  return rules.flatMap((rule) =>
    rule.looksAt === 'page' ? rule.check(page, taught).map((found) => findingOf(rule, found)) : [],
  );
}

/** What the rules for whole stories find; spans absolute. */
export function storyFindings(figures: StoryFigures): readonly Finding[] {
  return rules.flatMap((rule) =>
    rule.looksAt === 'story' ? rule.check(figures).map((found) => findingOf(rule, found)) : [],
  );
}

/** The problems of a story file, most of them of its front matter, as findings; for stories with and without a review. */
export function frontMatterFindings(problems: readonly Problem[]): readonly Finding[] {
  return problemFindings(frontMatterProblem, problems);
}

/** The problems of a sequence file as findings at their places in that file, in the order of the text. */
export function sequenceFindings(problems: readonly Problem[]): readonly Finding[] {
  return inOrder(problemFindings(sequenceProblem, problems));
}

/** Sorts findings by their place; those at one place keep their order. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
}

function problemFindings(rule: ProblemRule, problems: readonly Problem[]): readonly Finding[] {
  return problems.flatMap((problem) =>
    rule.check([problem]).map((found) => findingOf(rule, found, problem.severity)),
  );
}

function findingOf(rule: Rule, { span, message }: Found, severity?: Finding['severity']): Finding {
  return { rule: rule.id, severity: severityOf(rule.id, severity), span, message };
}
