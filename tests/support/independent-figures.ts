/**
 * Counts the figures of a series again, from the bare texts and by other means than the program: regular expressions instead
 * of a markdown parser, and no phonics. It holds for plain texts without emphasis, links, digits and abbreviations.
 */
export interface IndependentFigures {
  readonly words: number;
  readonly sentences: number;
  readonly longest: number;
  /** Running uses by word, in lower case, in the order in which they come up. */
  readonly uses: ReadonlyMap<string, number>;
}

/** The figures of one story. */
export function figuresOf(markdown: string): IndependentFigures {
  const body = markdown.replace(/^---\n[\s\S]*?\n---\n/, '');
  const [, ...later] = body.split(/^# .*$/m);
  const text = (later.length === 0 ? body : later.join('\n'))
    .replace(/^(>.*|!\[.*|---)$/gm, '')
    .replaceAll('\u2019', "'");
  const sentences = text
    .split(/\n{2,}/)
    // A line of verse without a mark ends a sentence when the next begins with a capital.
    .flatMap((paragraph) => paragraph.split(/(?<=[a-z])\n(?=[A-Z][a-z])/))
    .flatMap((part) => part.replaceAll('\n', ' ').split(/(?<=[.!?…]["']?)\s+(?=["']?[A-Z])/))
    .map((sentence) => sentence.match(/[A-Za-z]+(?:'[A-Za-z]+)*/g) ?? [])
    .filter((words) => words.length > 0);
  const uses = new Map<string, number>();
  for (const word of sentences.flat()) {
    uses.set(word.toLowerCase(), (uses.get(word.toLowerCase()) ?? 0) + 1);
  }
  return {
    words: sentences.flat().length,
    sentences: sentences.length,
    longest: Math.max(0, ...sentences.map((words) => words.length)),
    uses,
  };
}
