import type { RuleId } from '../review.ts';
import { frontMatterProblem } from './front-matter-problem.ts';
import { guessedReading } from './guessed-reading.ts';
import { littlePractice } from './little-practice.ts';
import { longPage } from './long-page.ts';
import { longSentence } from './long-sentence.ts';
import { missingHighFrequencyWord } from './missing-high-frequency-word.ts';
import type { Rule } from './rule.ts';
import { sequenceProblem } from './sequence-problem.ts';
import { tooManyStoryWords } from './too-many-story-words.ts';
import { underTarget } from './under-target.ts';
import { untaughtForm } from './untaught-form.ts';
import { untaughtPunctuation } from './untaught-punctuation.ts';
import { untaughtSpelling } from './untaught-spelling.ts';
import { unusedStoryWord } from './unused-story-word.ts';

/** Every rule, in the order of the design's table. A new rule is a file in this folder and a line here. */
export const rules: readonly Rule[] = [
  untaughtSpelling,
  untaughtForm,
  guessedReading,
  longSentence,
  longPage,
  missingHighFrequencyWord,
  littlePractice,
  tooManyStoryWords,
  unusedStoryWord,
  untaughtPunctuation,
  underTarget,
  sequenceProblem,
  frontMatterProblem,
];

/** The rule of an id. */
export function ruleOf(id: RuleId): Rule | undefined {
  return rules.find((rule) => rule.id === id);
}
