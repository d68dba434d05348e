import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../server/src/phonics/table.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { formsOf } from '../../server/src/words/word-forms.ts';
import { offersFor, packageThesaurus, put, sampleTaught } from '../support/fixes.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { expectKept } from './kept-table.ts';

const lessons = ['12', '18', '25', '32'] as const;
const rows = readFileSync(new URL('data/common-words.tsv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => {
    const [part = '', sentence = ''] = line.split('\t');
    return { part, sentence, word: /\[(.*)\]/.exec(sentence)?.[1] ?? '' };
  });

/** What a sentence comes to at a lesson. */
function reviewAt(sentence: string, lesson: string) {
  const story = readStory(`---\nlesson: "${lesson}"\nnames: [Kim, Tam, Nod]\n---\n${sentence}\n`);
  return reviewStory({ story, taught: sampleTaught(lesson), phonics: packagePhonics });
}

function isReadable(word: string, lesson: string): boolean {
  return reviewAt(`${word}.`, lesson).counts['not-taught'] === 0;
}

describe('the table of swaps made by hand', () => {
  const table = readFileSync(new URL('../../server/data/replacements.tsv', import.meta.url), 'utf8');
  const swaps = rowsOf(table, ['word', 'part', 'replacements', 'when']).map(
    ({ word, part, replacements, when }) => ({
      word,
      part,
      when,
      offered: replacements.split(/[\s;]+/).filter((each) => each !== '' && !each.startsWith('-')),
    }),
  );

  it('has rows for more than 250 words, each meaning once, parts of speech and followers as the format names them', () => {
    expect(new Set(swaps.map(({ word }) => word)).size).toBeGreaterThan(250);
    for (const { part, when } of swaps) {
      expect(['noun', 'verb', 'adjective', 'adverb', 'other']).toContain(part);
      expect(['', 'object', 'place', 'nothing']).toContain(when);
    }
    const keys = swaps.map(({ word, part, when, offered }) => `${word} ${part} ${when} ${offered.join(' ')}`);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('offers words of the lexicon only, none that is unfit, none for itself', () => {
    const wrong = swaps.flatMap(({ word, offered }) =>
      offered
        .filter(
          (each) =>
            each === word ||
            each
              .split('_')
              .some(
                (one) => !packagePhonics.isListed(one) || packagePhonics.words.unfitFor(one) !== undefined,
              ),
        )
        .map((each) => `${word} → ${each}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('replacements of 200 common words of picture books', () => {
  it('the list has 200 different words', () => {
    expect(new Set(rows.map(({ word }) => word)).size).toBe(200);
    expect(new Set(rows.map(({ part }) => part))).toEqual(new Set(['noun', 'verb', 'adjective']));
  });

  it('are found for most of those that are marked, at four lessons of the samples', () => {
    const lines = [
      '| lesson | words that are marked there | of these with a replacement | share | of all 200 | share |',
      '|---|---|---|---|---|---|',
    ];
    for (const lesson of lessons) {
      const found = rows.filter(({ sentence }) => offersFor(sentence, lesson).length > 0);
      const marked = rows.filter(({ word }) => !isReadable(word, lesson));
      const helped = found.filter((row) => marked.includes(row));
      const share = (part: number, whole: number): string => `${Math.floor((part / whole) * 1000) / 10} %`;
      expect(helped.length / marked.length).toBeGreaterThan(0.7);
      lines.push(
        `| ${lesson} | ${marked.length} | ${helped.length} | ${share(helped.length, marked.length)} | ${found.length} | ${share(found.length, rows.length)} |`,
      );
    }
    lines.push(
      '',
      `| word | ${lessons.map((lesson) => `lesson ${lesson}`).join(' | ')} |`,
      '|---|---|---|---|---|',
    );
    for (const { sentence, word } of rows) {
      const firsts = lessons.map((lesson) =>
        offersFor(sentence, lesson)
          .slice(0, 3)
          .map(({ text, article }) => (article === undefined ? text : `${article} ${text}`))
          .join(', '),
      );
      lines.push(`| ${word} | ${firsts.join(' | ')} |`);
    }
    expectKept('replacements.md', `${lines.join('\n')}\n`);
    const page = readFileSync(new URL('../../server/docs/replacements.md', import.meta.url), 'utf8');
    expect(page).toContain(lines.slice(0, 2 + lessons.length).join('\n'));
  }, 30_000);

  it.each(lessons)(
    'are readable in the sentence at lesson %s, fit for six-year-olds, and have its form',
    (lesson) => {
      for (const { sentence, part } of rows) {
        const offers = offersFor(sentence, lesson);
        expect(offers.length).toBeLessThanOrEqual(8);
        expect(new Set(offers.map(({ text }) => text)).size).toBe(offers.length);
        for (const offer of offers) {
          const after = put(sentence, offer);
          const at = sentence.indexOf('[');
          const page = reviewAt(after, lesson).pages[0];
          const moved = after.length - sentence.replace(/\[.*\]/, offer.text).length;
          const start = (page?.placed.page.source.indexOf(after) ?? 0) + at + moved;
          const placed = page?.reviewed.words.filter(
            ({ word }) => word.span.start >= start && word.span.start < start + offer.text.length,
          );
          expect(placed?.map(({ word }) => word.text).join(' '), after).toBe(offer.text);
          for (const { kind, word, reading } of placed ?? []) {
            expect(['decodable', 'high-frequency'], after).toContain(kind);
            expect(kind === 'decodable' ? reading?.source : 'lexicon', after).not.toBe('rule');
            expect(packagePhonics.words.unfitFor(word.text), after).toBeUndefined();
          }
          const [first = ''] = offer.text.split(' ');
          if (part === 'verb') {
            const forms = formsOf(first, packageThesaurus, packagePhonics).map(({ form }) => form);
            expect(forms, after).toContain('past');
          }
          expect(after, after).not.toMatch(/\ba [aeio]|\ban [bcdfgjklmnpqrstvwxyz]/);
        }
      }
    },
  );
});
