import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Part } from '../../server/src/phonics/reading.ts';

/** A lesson of the primer as `lessons.jsonl` has it. */
export interface PrimerLesson {
  readonly lesson: number;
  readonly heading: string;
  /** Words the book lists above the lesson's text, as printed. */
  readonly new_words: readonly string[];
  /** Letters whose sound the book lists as new; the same letter comes again for another of its sounds. */
  readonly new_sounds: readonly string[];
  /** The lesson's text, line by line; an empty line parts paragraphs. */
  readonly text: readonly string[];
}

/** What counts as taught: the listed sounds alone, or the listed words as well, learned as wholes. */
export type View = 'sounds' | 'sounds and words';

/** Reads the lessons, one a line. */
export function lessonsOf(jsonLines: string): readonly PrimerLesson[] {
  return jsonLines
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as PrimerLesson);
}

/**
 * The book's own teaching order as a sequence file. A listed sound becomes a spelling: its key word is the first of the
 * lesson's new words in which those letters say a sound that is not taught yet (*five* for the i of lesson 17, which is
 * i_e; *hurt* for the u of lesson 29, which is ur). A listed letter that says nothing new there teaches nothing.
 */
export function sequenceOf(lessons: readonly PrimerLesson[], view: View, phonics: Phonics): string {
  const taught = new Set<string>();
  const lines = ['title: The primer of 1881, by its own order', 'lessons:'];
  for (const lesson of lessons) {
    const spellings = lesson.new_sounds.flatMap((sound) => spellingOf(sound, lesson, taught, phonics));
    lines.push(`  - name: "${lesson.lesson}"`);
    if (spellings.length > 0) lines.push(`    spellings: [${spellings.join(', ')}]`);
    if (view === 'sounds and words' && lesson.new_words.length > 0) {
      lines.push(`    high-frequency words: [${lesson.new_words.map(quoted).join(', ')}]`);
    }
  }
  return `${lines.join('\n')}\n`;
}

/** A lesson's text as a story of that lesson; the names the book has listed so far are declared. */
export function storyOf(lesson: PrimerLesson, lessons: readonly PrimerLesson[]): string {
  const names = lessons
    .filter((each) => each.lesson <= lesson.lesson)
    .flatMap((each) => each.new_words)
    .filter((word) => /^[A-Z][a-z]/.test(word) && !notNames.has(word) && !word.includes("'"));
  const head = ['---', `lesson: "${lesson.lesson}"`];
  if (names.length > 0) head.push(`names: [${[...new Set(names)].join(', ')}]`);
  return `${[...head, '---', `# ${lesson.heading}`, '', ...lesson.text].join('\n')}\n`;
}

/** Listed with a capital, and not the name of a person in the story. */
const notNames: ReadonlySet<string> = new Set(['May', 'Miss', 'God', 'Lord']);

function spellingOf(
  sound: string,
  lesson: PrimerLesson,
  taught: Set<string>,
  phonics: Phonics,
): readonly string[] {
  const letters = sound.replace(/ .*/, '');
  for (const word of lesson.new_words) {
    for (const part of phonics.readingsOf(word)[0]?.parts ?? []) {
      const correspondence = `${part.letters} ${phonics.soundClass(part.letters, part.sounds)}`;
      if (!isSpeltWith(part, letters) || taught.has(correspondence)) continue;
      taught.add(correspondence);
      return [quoted(`${part.letters} as in ${word.toLowerCase()}`)];
    }
  }
  return [];
}

/** The letters themselves, or for a vowel letter its split grapheme or the vowel with r. */
function isSpeltWith(part: Part, letters: string): boolean {
  if (part.letters === letters || part.letters === `${letters}_e`) return true;
  return (
    /^[aeiou]$/.test(letters) &&
    (part.letters === `${letters}r` ||
      part.letters === `${letters}re` ||
      part.letters === `${letters}r${letters}`)
  );
}

function quoted(text: string): string {
  return /^[a-z_ ]+$/i.test(text) ? text : JSON.stringify(text);
}
