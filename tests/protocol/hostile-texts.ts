import { storyAt } from '../support/small-lane.ts';

/** Whole files that are made to hurt; each is made when it is asked for, since some are large. */
export const hostileTexts: readonly { readonly name: string; readonly text: () => string }[] = [
  { name: 'a story of 2 MB', text: () => storyAt('2', 'The night map sat.\n\n'.repeat(110_000)) },
  { name: 'a story of 900 kB', text: () => storyAt('2', 'The map sat. Night!\n\n---\n\n'.repeat(35_000)) },
  { name: 'a line of 900 kB', text: () => storyAt('2', 'map '.repeat(225_000)) },
  { name: 'a line of 1 MB without a space', text: () => storyAt('2', 'm'.repeat(1_000_000)) },
  { name: '10,000 signs of a quote', text: () => storyAt('2', `${'>'.repeat(10_000)} map\n\nMap.`) },
  { name: '10,000 brackets', text: () => storyAt('2', `${'['.repeat(10_000)}map${']'.repeat(10_000)}`) },
  { name: '5,000 lists in lists', text: () => storyAt('2', `${'- '.repeat(5_000)}map`) },
  { name: '10,000 emphasis marks', text: () => storyAt('2', `${'*a_ '.repeat(10_000)}`) },
  {
    name: '10,000 ticks',
    text: () => storyAt('2', Array.from({ length: 400 }, (_, n) => '`'.repeat(n)).join(' a ')),
  },
  {
    name: 'binary',
    text: () => String.fromCharCode(...Array.from({ length: 60_000 }, (_, n) => (n * 7919) % 256)),
  },
  {
    name: 'a binary story',
    text: () =>
      storyAt('2', String.fromCharCode(...Array.from({ length: 60_000 }, (_, n) => (n * 40_503) % 65_536))),
  },
  { name: 'NULs', text: () => storyAt('2', `Ma\u0000p ${'\u0000'.repeat(10_000)} nap.`) },
  { name: 'halves of pairs', text: () => storyAt('2', `Ma\ud800p \udc00 ${'\ud83d'.repeat(5_000)} nap.`) },
  { name: '20,000 combining marks', text: () => storyAt('2', `e${'\u0301'.repeat(20_000)} map`) },
  { name: '10,000 page breaks', text: () => storyAt('2', '---\n'.repeat(10_000)) },
  {
    name: '10,000 lines of front matter',
    text: () =>
      `---\nlesson: "2"\n${Array.from({ length: 10_000 }, (_, n) => `k${n}: v`).join('\n')}\n---\nMap.\n`,
  },
  { name: 'deep YAML', text: () => `---\nlesson: "2"\nnames: ${'['.repeat(5_000)}\n---\nMap.\n` },
  {
    name: '10,000 definitions',
    text: () => storyAt('2', `${'[a]: b\n'.repeat(10_000)}\n[a] map\n\n---\n\n[a] nap`),
  },
  { name: 'a front matter that never ends', text: () => `---\nlesson: "2"\n${'names: x\n'.repeat(20_000)}` },
  { name: 'half a document', text: () => '---\nlesson: "' },
];
