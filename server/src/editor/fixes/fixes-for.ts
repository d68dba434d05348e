import type { Finding } from '../../review/review.ts';
import type { Fix, Knowledge, Reviewed } from './fix.ts';
import { keyFixes, storyWordFixes } from './front-matter-fixes.ts';
import { highFrequencyFixes, markFixes, pageFixes, textFixes } from './page-fixes.ts';
import { sentenceFixes } from './sentence-fixes.ts';
import { wordFixes } from './word-fixes.ts';

/** The ways to mend a finding of a review, the likeliest to be wanted first; none for most rules. */
export function fixesFor(finding: Finding, reviewed: Reviewed, knowledge: Knowledge): readonly Fix[] {
  switch (finding.rule) {
    case 'untaught-spelling':
    case 'untaught-form':
    case 'guessed-reading':
      return wordFixes(finding, reviewed, knowledge);
    case 'long-sentence':
      return sentenceFixes(finding, reviewed, knowledge);
    case 'missing-high-frequency-word':
      return highFrequencyFixes(finding, reviewed, knowledge);
    case 'unused-story-word':
      return storyWordFixes(finding, reviewed);
    case 'long-page':
      return pageFixes(finding, reviewed);
    case 'untaught-punctuation':
      return markFixes(finding, reviewed);
    case 'front-matter-problem':
      return finding.span.start < reviewed.review.story.bodyStart
        ? keyFixes(finding, reviewed)
        : textFixes(finding, reviewed);
    default:
      return [];
  }
}
