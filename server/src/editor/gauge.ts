import type { Review, ReviewedWord } from '../review/review.ts';
import { whyNotTaught } from '../review/wording.ts';
import { isUnread } from '../story/read-page.ts';
import { foldedWord } from '../text/folded-word.ts';
import { type Span, shifted } from '../text/span.ts';
import type { Analysis, Content } from './analysis.ts';
import { rangeOf } from './diagnostics.ts';
import type { Gauge, GaugeParams, ProtocolRange, SequenceProblems } from './protocol.ts';
import type { SequenceFile } from './sequence-files.ts';
import { fileName } from './uri.ts';

/** What the client is told of an analysis; nothing for a sequence. */
export function gaugeParamsOf({ snapshot, content }: Analysis): GaugeParams | undefined {
  const { uri, document } = snapshot;
  const { version } = document;
  switch (content.kind) {
    case 'sequence':
      return undefined;
    case 'not-reviewed':
      return {
        uri,
        version,
        reason: content.reason,
        message: content.message,
        ...sequenceProblemsOf(content.sequenceFile),
      };
    case 'reviewed': {
      const range = (span: Span): ProtocolRange => rangeOf(snapshot, span);
      return { uri, version, gauge: { uri, version, ...gaugeOf(content, fileName(uri), range) } };
    }
  }
}

function gaugeOf(
  { review, sequenceFile }: Extract<Content, { kind: 'reviewed' }>,
  untitled: string,
  range: (span: Span) => ProtocolRange,
): Omit<Gauge, 'uri' | 'version'> {
  const { story, taught, counts, readable, decodable, target, passes } = review;
  const { name, title, nameSpan } = taught.lesson;
  return {
    title: story.frontMatter.title?.value ?? story.title?.text ?? untitled,
    lesson: {
      name,
      ...(title === undefined ? {} : { title }),
      sequenceUri: sequenceFile.snapshot.uri,
      range: rangeOf(sequenceFile.snapshot, nameSpan),
    },
    ...sequenceProblemsOf(sequenceFile),
    counts,
    readable,
    decodable,
    target,
    passes,
    notTaught: notTaughtRows(review, range),
    newSpellings: review.newSpellingUses.map(({ spelling, spans }) => ({
      letters: spelling.line.letters,
      keyWord: spelling.line.keyWord,
      ranges: spans.map(range),
    })),
    practice: { words: review.practice, atLeast: taught.targets.practice },
    newHighFrequencyWords: review.newWordUses.map(({ word, spans }) => ({
      word,
      atLeast: taught.targets.repeats,
      ranges: spans.map(range),
    })),
    sentences: {
      atMost: taught.targets.sentence,
      each: story.pages.flatMap(({ page, start }) =>
        page.sentences.map(({ words, span }) => ({
          words: words.length,
          range: range(shifted(span, start)),
        })),
      ),
    },
    pages: {
      atMost: taught.targets.page,
      each: review.pages.map(({ placed, reviewed }) => ({
        number: placed.number,
        words: reviewed.counts.words,
        counts: reviewed.counts,
        range: range({ start: placed.start, end: placed.start + placed.page.source.length }),
      })),
    },
    findings: review.findingCount,
    ...(story.pages.some(({ page }) => isUnread(page)) ? { isCut: true } : {}),
  };
}

function sequenceProblemsOf(file: SequenceFile | undefined): { sequenceProblems?: SequenceProblems } {
  const problems = file?.teaching.problems ?? [];
  const errors = problems.filter(({ severity }) => severity === 'error');
  const first = errors[0] ?? problems[0];
  if (file === undefined || first === undefined) return {};
  const { uri } = file.snapshot;
  const range = rangeOf(file.snapshot, first.span);
  return { sequenceProblems: { uri, count: problems.length, errors: errors.length, range } };
}

function notTaughtRows({ pages, taught }: Review, range: (span: Span) => ProtocolRange): Gauge['notTaught'] {
  const rows = new Map<string, { reviewed: ReviewedWord; spans: Span[] }>();
  for (const { placed, reviewed } of pages) {
    for (const word of reviewed.words) {
      if (word.kind !== 'not-taught') continue;
      const span = shifted(word.word.span, placed.start);
      const key = foldedWord(word.word.text);
      const row = rows.get(key);
      if (row === undefined) rows.set(key, { reviewed: word, spans: [span] });
      else row.spans.push(span);
    }
  }
  return [...rows.values()].map(({ reviewed, spans }) => ({
    word: reviewed.word.text,
    why: whyNotTaught(reviewed, taught),
    ranges: spans.map(range),
  }));
}
