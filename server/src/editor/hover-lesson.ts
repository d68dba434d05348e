import { notated } from '../phonics/notation.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Reading } from '../phonics/reading.ts';
import { counted, lessonLabel, listed } from '../review/wording.ts';
import { graphemesOf } from '../sequence/resolve-spelling.ts';
import type { SpellingLine } from '../sequence/sequence.ts';
import type { Taught, TaughtSpelling } from '../sequence/taught.ts';
import type { WordFinder } from '../words/find-words.ts';
import type { Settings } from './protocol.ts';
import { type Block, line } from './rich-text.ts';

/** What a lesson teaches, and what its stories must reach. */
export function lessonBlocks({ lesson, targets }: Taught): readonly Block[] {
  const label = lessonLabel(lesson);
  const blocks: Block[] = [
    line(
      { strong: label.charAt(0).toUpperCase() + label.slice(1) },
      lesson.title ? ` · ${lesson.title}` : '',
    ),
  ];
  const row = (name: string, items: readonly string[]): void => {
    if (items.length > 0) blocks.push(line({ strong: name }, `: ${items.join(', ')}`));
  };
  row(
    'Spellings',
    lesson.spellings.map(({ value }) => `${value.letters} as in ${value.keyWord}`),
  );
  row(
    'High-frequency words',
    lesson.highFrequencyWords.map(({ value }) => value),
  );
  row(
    'Endings',
    lesson.endings.map(({ value }) => value),
  );
  row(
    'Blends',
    lesson.blends.map(({ value }) => value),
  );
  row('Longest word', lesson.syllables === undefined ? [] : [counted(lesson.syllables.value, 'syllable')]);
  row(
    'Punctuation',
    lesson.punctuation.map(({ value }) => value),
  );
  blocks.push(
    line(
      `Its stories: at least ${targets.readable} % readable, at most ${counted(targets.sentence, 'word')} in a sentence and ${targets.page} on a page.`,
    ),
  );
  return blocks;
}

/** The words a lesson opens up: those that use what is first taught in it, the most useful for children first. */
export function openedBlocks(taught: Taught, finder: WordFinder): readonly Block[] {
  const { words, hasMore } = finder.find(taught, { isNew: true, limit: mostOpened });
  if (words.length === 0) return [line('It opens up no words that can be offered.')];
  const list = words.map(({ word }) => word).join(', ');
  return [line({ strong: 'Opens up' }, `: ${list}${hasMore ? ' and more' : ''}`)];
}

const mostOpened = 20;

/** What `X as in W` comes to. */
export function spellingBlocks(
  { letters, keyWord }: SpellingLine,
  resolved: TaughtSpelling | undefined,
  phonics: Phonics,
  notation: Settings['sounds'],
): readonly Block[] {
  const title = line({ strong: `${letters} as in ${keyWord}` });
  const whole = phonics
    .readingsOf(keyWord)
    .slice(0, 1)
    .map((reading) => readingLine(keyWord, reading, notation));
  if (resolved === undefined) {
    return [title, line('Teaches nothing: the key word does not show it.'), ...whole];
  }
  const graphemes = resolved.pattern.map(({ letters: part, sounds }) =>
    sounds.length === 0 ? `${part}, which is silent` : `${part} that says /${notated(sounds, notation)}/`,
  );
  return [title, line(`Teaches ${listed(graphemes)}.`), ...whole];
}

/** A word taught as a whole, with its sounds. */
export function wholeWordBlocks(
  word: string,
  phonics: Phonics,
  notation: Settings['sounds'],
): readonly Block[] {
  return [
    line({ strong: word }, ' · taught as a whole word'),
    ...phonics
      .readingsOf(word)
      .slice(0, 1)
      .map((reading) => readingLine(word, reading, notation)),
  ];
}

/** A reading on one line: `night is n-igh-t, /nīt/`. */
export function readingLine(word: string, reading: Reading, notation: Settings['sounds']): Block {
  return line(`${word} is ${graphemesOf(reading)}, ${soundsOf(reading, notation)}`);
}

/** The sounds of a whole reading between slashes. */
export function soundsOf({ parts }: Reading, notation: Settings['sounds']): string {
  return `/${parts.map(({ sounds, stress }) => notated(sounds, notation, stress)).join('')}/`;
}
