/** What a column of a table of lessons can be taken for. */
export const columnUses = [
  'lesson',
  'title',
  'spellings',
  'key words',
  'high-frequency words',
  'endings',
  'blends',
  'syllables',
  'punctuation',
  'readable',
  'sentence',
  'page',
  'practice',
  'repeats',
  'story words',
  'settings',
  'note',
  'left out',
] as const;
/** One of the things a column can be taken for. */
export type ColumnUse = (typeof columnUses)[number];

/** How many columns may be taken for the same: notes, left-out ones and lists any number, the others one. */
export function mayRepeat(use: ColumnUse): boolean {
  return !['lesson', 'title', 'syllables', 'settings', 'key words'].includes(use) && !isTarget(use);
}

/** Whether a column holds one of the targets. */
export function isTarget(use: ColumnUse): boolean {
  return ['readable', 'sentence', 'page', 'practice', 'repeats', 'story words'].includes(use);
}

/**
 * What each column is taken for by its heading. A heading that says nothing makes its column a note, so that its text is
 * kept as a comment; a second column for what only one can be is a note too. Empty headings over nothing are left to the caller.
 */
export function guessColumns(headings: readonly string[]): readonly ColumnUse[] {
  const taken = new Set<ColumnUse>();
  const guesses: ColumnUse[] = headings.map(() => 'note');
  // The plainest headings choose first: “Lesson” before “Week” and both before “Lesson focus”.
  for (const isExact of [true, false]) {
    const found = headings
      .map((heading, index) => ({ index, ...useOf(plain(heading), isExact) }))
      .sort((left, right) => (left.rank ?? 0) - (right.rank ?? 0));
    for (const { index, use } of found) {
      if (guesses[index] !== 'note' || use === undefined || (taken.has(use) && !mayRepeat(use))) continue;
      taken.add(use);
      guesses[index] = use;
    }
  }
  return guesses;
}

/** Lower case, single spaces, no signs but letters and digits. */
function plain(heading: string): string {
  return heading
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[’']/g, '')
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim();
}

/** What a heading says, and the place of the name by which it does among the names of that use. */
function useOf(heading: string, isExact: boolean): { use?: ColumnUse; rank?: number } {
  if (heading === '') return {};
  for (const [use, names] of headingNames) {
    const rank = isExact
      ? names.indexOf(heading)
      : names.findIndex((name) => ` ${heading} `.includes(` ${name} `));
    if (rank !== -1) return { use, rank };
  }
  return {};
}

/** Headings by which columns are known, the more telling first. Common words of the trade; no source. */
const headingNames: readonly (readonly [ColumnUse, readonly string[]])[] = [
  [
    'high-frequency words',
    [
      'high frequency words',
      'high frequency word',
      'high frequency',
      'hfw',
      'hfws',
      'hf words',
      'sight words',
      'sight word',
      'tricky words',
      'tricky word',
      'irregular words',
      'irregular word',
      'exception words',
      'whole words',
      'words taught whole',
      'new words',
      'words',
    ],
  ],
  ['story words', ['story words', 'story word']],
  [
    'key words',
    [
      'key words',
      'key word',
      'keywords',
      'keyword',
      'example words',
      'example word',
      'examples',
      'example',
      'as in',
      'cue word',
      'cue words',
      'anchor word',
      'anchor words',
    ],
  ],
  ['punctuation', ['punctuation', 'punctuation marks', 'marks']],
  [
    'endings',
    [
      'endings',
      'ending',
      'suffixes',
      'suffix',
      'inflections',
      'inflectional endings',
      'affixes',
      'affix',
      'prefixes and suffixes',
    ],
  ],
  ['blends', ['blends', 'blend', 'consonant blends', 'clusters', 'cluster', 'consonant clusters']],
  ['syllables', ['syllables', 'syllable', 'longest word', 'number of syllables']],
  [
    'spellings',
    [
      'spellings',
      'spelling',
      'new spellings',
      'graphemes',
      'grapheme',
      'phonograms',
      'phonogram',
      'gpcs',
      'gpc',
      'letters',
      'letter',
      'sounds',
      'sound',
      'phonics',
      'correspondences',
      'spelling patterns',
      'patterns',
      'pattern',
      'sound spellings',
    ],
  ],
  ['readable', ['readable', 'readable percent']],
  ['sentence', ['sentence', 'sentence length', 'words in a sentence', 'longest sentence']],
  ['page', ['page', 'page length', 'words on a page', 'longest page']],
  ['practice', ['practice']],
  ['repeats', ['repeats', 'repetitions']],
  ['settings', ['settings']],
  ['note', ['notes', 'note', 'comments', 'comment', 'remarks']],
  [
    'title',
    [
      'title',
      'topic',
      'focus',
      'name of lesson',
      'lesson title',
      'lesson focus',
      'subject',
      'theme',
      'description',
    ],
  ],
  [
    'lesson',
    [
      'lesson',
      'lessons',
      'lesson no',
      'lesson number',
      'lesson name',
      'no',
      'nr',
      'number',
      '#',
      'week',
      'unit',
      'step',
      'day',
      'name',
    ],
  ],
];
