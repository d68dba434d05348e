import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Part } from '../../server/src/phonics/reading.ts';
import type { PrimerLesson } from './lessons.ts';

/** What counts as taught: the listed sounds alone, or the listed words as well, learned as wholes. */
export type View = 'sounds' | 'sounds and words';

/**
 * The book's own teaching order as a sequence file. A listed sound becomes a spelling: of what its letters say in the
 * lesson's new words and no lesson before has listed, the correspondence that most of these words have (short a in lesson
 * 1, with *and*, *cat* and *rat*, not the weak one of *a*), with the first such word for its key word. The letters are
 * looked for by themselves, with a final e or with an r (*five* for the i of lesson 17, *hurt* for the u of lesson 29); only where
 * they are not found so, in a longer grapheme (*see* for the e of lesson 7, *catch* for the ch of lesson 9), since the book
 * strikes out the letters that it takes to be silent. A listed letter that says nothing new there teaches nothing.
 */
export function sequenceOf(lessons: readonly PrimerLesson[], view: View, phonics: Phonics): string {
  const taught = new Set<string>();
  const known = new Set<string>();
  const lines = ['title: The primer of 1881, by its own order', 'lessons:'];
  for (const lesson of lessons) {
    const spellings = lesson.new_sounds.flatMap((sound) => spellingOf(sound, lesson, taught, phonics));
    lines.push(`  - name: "${lesson.lesson}"`);
    if (spellings.length > 0) lines.push(`    spellings: [${spellings.join(', ')}]`);
    // Two words that the copy has misread come again in their own lesson; once taught is taught.
    const words = lesson.new_words.filter((word) => !known.has(word.toLowerCase()));
    for (const word of words) known.add(word.toLowerCase());
    if (view === 'sounds and words' && words.length > 0) {
      lines.push(`    high-frequency words: [${words.map(quoted).join(', ')}]`);
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

/** The files of a series by name: `sequence.yaml`, and a story a lesson, `01.md` to `52.md`. */
export function seriesOf(
  lessons: readonly PrimerLesson[],
  view: View,
  phonics: Phonics,
): ReadonlyMap<string, string> {
  return new Map([
    ['sequence.yaml', sequenceOf(lessons, view, phonics)],
    ...lessons.map(
      (lesson) => [`${String(lesson.lesson).padStart(2, '0')}.md`, storyOf(lesson, lessons)] as const,
    ),
  ]);
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
  for (const holds of [isSpeltWith, isHeldIn]) {
    const uses = new Map<string, { readonly spelling: string; words: number }>();
    for (const word of lesson.new_words) {
      for (const part of phonics.readingsOf(word)[0]?.parts ?? []) {
        const correspondence = `${part.letters} ${phonics.soundClass(part.letters, part.sounds)}`;
        if (part.sounds.length === 0 || !holds(part, letters) || taught.has(correspondence)) continue;
        const use = uses.get(correspondence);
        if (use) use.words += 1;
        else uses.set(correspondence, { spelling: `${part.letters} as in ${word}`, words: 1 });
      }
    }
    // The sort is stable: of those that as many words have, the first stays first.
    const [most] = [...uses].sort(([, one], [, other]) => other.words - one.words);
    if (!most) continue;
    taught.add(most[0]);
    return [quoted(most[1].spelling)];
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

/** A longer grapheme: a letter sounds at its head (*see*), a digraph wherever it stands (*catch*). */
function isHeldIn(part: Part, letters: string): boolean {
  return letters.length > 1 ? part.letters.includes(letters) : part.letters.startsWith(letters);
}

function quoted(text: string): string {
  return /^[a-z_ ]+$/i.test(text) ? text : JSON.stringify(text);
}
