/** A stream of numbers from 0 to 1 that a seed decides (mulberry32, public domain). */
export function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const subjects = [
  'Kit',
  'Nod',
  'the red hen',
  'a small fox',
  'the old dog',
  'my mom',
  'the tin man',
  'a big frog',
];
const verbs = [
  'ran to',
  'sat on',
  'looked at',
  'jumped over',
  'hid behind',
  'saw',
  'painted',
  'kept',
  'lifted',
];
const objects = [
  'the pond',
  'a green leaf',
  'the long road',
  'his hat',
  'the moonlight',
  'a rabbit',
  'the kitchen table',
  'her light boat',
];

/** A story of about `words` words for lesson `lesson`, pages of some twenty words, the same for the same seed. */
export function storyOf(words: number, lesson: string, seed: number): string {
  const random = randomNumbers(seed);
  const pick = (list: readonly string[]): string => list[Math.floor(random() * list.length)] ?? '';
  const lines = ['---', `lesson: "${lesson}"`, 'names: [Kit, Nod]', '---', '# A Long Day', ''];
  let count = 0;
  let onPage = 0;
  while (count < words) {
    const sentence = `${pick(subjects)} ${pick(verbs)} ${pick(objects)}.`;
    const line = `${sentence[0]?.toUpperCase() ?? ''}${sentence.slice(1)}`;
    const length = line.split(' ').length;
    if (onPage + length > 20) {
      lines.push('', '---', '', '![The next picture]()', '');
      onPage = 0;
    }
    lines.push(line);
    count += length;
    onPage += length;
  }
  return `${lines.join('\n')}\n`;
}
