/** A spelling with every reading that counts as right. */
export interface ListedWord {
  readonly word: string;
  /** Each reading as ARPAbet codes without stress. Never empty, no reading twice. */
  readonly readings: readonly (readonly string[])[];
}

/**
 * Reads lines of `word<TAB>ARPAbet`; lines with the same word are gathered into one entry, at the word's first place.
 * Words are put in lower case and stress digits dropped. Empty lines are skipped.
 * @throws Error naming the line when a line has no tab, no word or no sound.
 */
export function parseWordList(text: string): ListedWord[] {
  const gathered = new Map<string, Map<string, readonly string[]>>();
  text.split('\n').forEach((line, index) => {
    if (line.trim() === '') return;
    const [word = '', sounds = ''] = line.split('\t').map((field) => field.trim());
    const reading = sounds.replace(/\d/g, '').split(/\s+/).filter(Boolean);
    if (word === '' || reading.length === 0)
      throw new Error(`Line ${index + 1}: expected word<TAB>sounds, found "${line.trim()}"`);
    const key = word.toLowerCase();
    const readings = gathered.get(key) ?? new Map<string, readonly string[]>();
    readings.set(reading.join(' '), reading);
    gathered.set(key, readings);
  });
  return [...gathered].map(([word, readings]) => ({ word, readings: [...readings.values()] }));
}

/** The list as text that `parseWordList` reads back: one line a reading. */
export function formatWordList(words: readonly ListedWord[]): string {
  return words
    .flatMap(({ word, readings }) => readings.map((reading) => `${word}\t${reading.join(' ')}\n`))
    .join('');
}

/**
 * The alphabetic words of the CMU dictionary, stress off, alternates (`read(2)`) gathered with their word.
 * `dictionary` maps keys to ARPAbet, as the package gives it; a value may end in a comment after ` #`.
 */
export function wordsOfDictionary(dictionary: Readonly<Record<string, string>>): ListedWord[] {
  const lines = Object.entries(dictionary).flatMap(([key, value]) => {
    const word = key.replace(/\(\d\)$/, '');
    return /^[a-z]+$/.test(word) ? [`${word}\t${value.replace(/ #.*/, '')}\n`] : [];
  });
  return parseWordList(lines.join(''));
}

/**
 * Draws `testSize` words for testing and leaves the rest for training. The same list, size and seed give the same split
 * (words are put in code-point order first, then shuffled by Fisher and Yates's method with a 32-bit generator).
 */
export function splitWords(
  words: readonly ListedWord[],
  { testSize, seed }: { readonly testSize: number; readonly seed: number },
): { readonly train: ListedWord[]; readonly test: ListedWord[] } {
  const shuffled = [...words].sort((a, b) => (a.word < b.word ? -1 : 1));
  const random = randomNumbers(seed);
  for (let last = shuffled.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    const [a, b] = [shuffled[last], shuffled[other]];
    if (a && b) [shuffled[last], shuffled[other]] = [b, a];
  }
  return { test: shuffled.slice(0, testSize), train: shuffled.slice(testSize) };
}

/** Numbers in [0, 1) from a 32-bit seed: the published `mulberry32` mixing steps (public domain). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
