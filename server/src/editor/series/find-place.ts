import type { Finding, Review, RuleId } from '../../review/review.ts';
import { failsStory } from '../../review/severity.ts';
import { spellingLabel } from '../../series/gap-wording.ts';
import { highFrequencyKey } from '../../series/story-coverage.ts';
import { type Span, shifted } from '../../text/span.ts';
import type { SeriesPlace } from './protocol.ts';

/** Where a place of a series is in a story; nothing when the story does not have it any more. Offsets in the file. */
export function placeInStory(review: Review, place: SeriesPlace): Span | undefined {
  switch (place.kind) {
    case 'story':
      return firstFault(review) ?? beginning(review);
    case 'word':
      return firstWord(review, ({ text }) => highFrequencyKey(text) === highFrequencyKey(place.word));
    case 'spelling':
      return firstWord(review, ({ uses }) => uses().includes(place.spelling));
    case 'lesson':
      return undefined;
  }
}

/** What first keeps the story from passing; where too few words are readable, these are the words that are not. */
function firstFault({ findings }: Review): Span | undefined {
  const failing = findings.filter(failsStory);
  const isUnderTarget = failing.some(({ rule }) => rule === 'under-target');
  const isFault = (finding: Finding): boolean =>
    finding.rule !== 'under-target' &&
    (failsStory(finding) || (isUnderTarget && wordRules.has(finding.rule)));
  return (findings.find(isFault) ?? failing[0])?.span;
}

const wordRules: ReadonlySet<RuleId> = new Set<RuleId>(['untaught-spelling', 'untaught-form']);

/** The first word for the child, past the front matter. */
function beginning({ pages, story }: Review): Span {
  const page = pages.find(({ reviewed }) => reviewed.words.length > 0);
  const word = page?.reviewed.words[0]?.word;
  if (page !== undefined && word !== undefined) return shifted(word.span, page.placed.start);
  return { start: story.text.length, end: story.text.length };
}

interface WordUses {
  readonly text: string;
  /** The spellings that count as used here, as a series counts them. */
  readonly uses: () => readonly string[];
}

function firstWord({ pages, taught }: Review, isMeant: (word: WordUses) => boolean): Span | undefined {
  for (const { placed, reviewed } of pages) {
    for (const { word, kind, reading } of reviewed.words) {
      const uses = (): readonly string[] =>
        kind === 'decodable' && reading !== undefined ? taught.judge(reading).uses.map(spellingLabel) : [];
      if (isMeant({ text: word.text, uses })) return shifted(word.span, placed.start);
    }
  }
  return undefined;
}
