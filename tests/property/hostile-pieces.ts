/** What scripts paste into a story: whole and broken markdown, front matter, line ends and letters that are hard on offsets. */
export const hostilePieces: readonly string[] = [
  // Words, readable and not, and what ends or joins them.
  ...[
    'map',
    'The',
    'night',
    'rabbit',
    'zat',
    'Kim',
    'jumps',
    'pond',
    'said',
    'read',
    'Mr.',
    'I',
    '12',
    'don’t',
    "it's",
  ],
  ...[' ', ' ', '. ', '! ', '? ', '… ', ', ', '-', '—', '"', '“', '”', "'", '’', ':', ';', '(', ')'],
  // Line ends of every kind, blank lines, indents.
  ...[
    '\n',
    '\n\n',
    '\r\n',
    '\r',
    '\r\n\r\n',
    '\u2028',
    '\u0085',
    '\t',
    '    ',
    '\n    map',
    '\n\tmap',
    '  \n',
    '\\\n',
  ],
  // Page breaks, and what only looks like one.
  ...[
    '---',
    '\n---\n',
    '\n\n---\n\n',
    '\r\n---\r\n',
    '***',
    '\n* * *\n',
    '\n___\n',
    '   ---\n',
    '    ---\n',
    '--',
    '\n===\n',
    '- - -',
  ],
  // Front matter: fences, keys, values, and quotation marks that are not closed.
  ...[
    '---\nlesson: 3\n---\n',
    '---\n',
    '\n...\n',
    'lesson: 1\n',
    'lesson: "3"\n',
    'lesson:',
    'title: The Net\n',
    'names: [Kim]\n',
  ],
  ...[
    'names: [',
    'names:\n  - Night\n',
    'story words:\n  pond: a lake\n',
    'story words: [pond, zat]\n',
    'sequence: other.yaml\n',
  ],
  ...[
    'pronunciations:\n  zat: z-a-t\n',
    'pronunciations: {night: n-igh-t}\n',
    ': ',
    '{',
    '}',
    '*a',
    '&a',
    '!x ',
    '# ',
    'title: "',
  ],
  // Code, comments, HTML.
  ...[
    '```',
    '\n```\n',
    '~~~\n',
    '\n````\n',
    '`',
    '``',
    '<!--',
    '-->',
    '<!-- map -->',
    '\n<!--\n',
    '\n-->\n',
    '<b>',
    '</b>',
    '<div>\n',
    '<script>',
  ],
  ...['<![CDATA[', '<?x', '<!X', '<a href="', '{{', '}}', '%%'],
  // Lists, quotes, headings, tables, links, pictures, emphasis, references.
  ...[
    '- ',
    '* ',
    '1. ',
    '\n- map\n  - ```\n',
    '> ',
    '\n> Ask: what?\n',
    '>> ',
    '\n# The Net\n',
    '\n## Later\n',
    '\n###### \n',
    'map\n===',
  ],
  ...[
    '\n| a | b |\n|---|---|\n| map | net |\n',
    '|',
    '[',
    ']',
    '](',
    ')',
    '![',
    '![a net](art/net.png)',
    '[map][a]',
    '\n[a]: b.png\n',
    '[a]:',
    '[^1]',
  ],
  ...[
    '*',
    '**',
    '_',
    '__',
    '~~',
    '\\',
    '\\*',
    '&amp;',
    '&',
    '&#0;',
    '&#x1F600;',
    '&eacute;',
    '<http://a.b>',
    'www.a.b',
  ],
  // Letters that are hard: astral, halves of pairs, combining, invisible, turning, folding in length.
  ...[
    '😀',
    '👩‍👧',
    '𝕞𝕒𝕡',
    '\ud83d',
    '\ude00',
    'e\u0301',
    'é',
    '\u0301',
    '\ufeff',
    '\u0000',
    '\u00ad',
    '\u200b',
    '\u202e',
    'ß',
    'İ',
    'ﬁ',
    'ſ',
    'Ǆ',
    '\u00a0',
  ],
];

const head = '---\nlesson: "2"\nnames: [Kim]\nstory words:\n  pond: a small lake\n---\n';

/** Stories as they are opened: none, small ones, ones with many pages. */
export const startTexts: readonly string[] = [
  '',
  `${head}# The Net\n\nKim sat. The map is in the pond.\n\n---\n\n![Kim](k.png)\nThe net! "Nap," said Kim.\n\n> Ask: where?\n\n---\n\nIt is a night map. Kim sat.\n`,
  `${head}The map.\n\n---\n\nThe map.\n\n---\n\nThe map.\n\n---\n\nMap [Kim][a] sat.\n\n---\n\n## Later\n\nPip sat.\n\n[a]: b\n`,
  `${head.replaceAll('\n', '\r\n')}# Map\r\n\r\nThe pond sat.\r\n\r\n---\r\n\r\nPat 😀 sat at the rabbit.\r\n`,
  `\ufeff${head}# A\n\n- Kim sat.\n- \`\`\`\n  map\n  ---\n  \`\`\`\n\n---\n\n<!--\n---\n-->\n\nTip it. Tip it!\n`,
  '---\nlesson: 1\n\n# No End\n\nThe map sat.\n',
  '---\ntitle: none\n---\n\nThe map sat.\n',
];

const lessons = `title: Willow Lane
targets: { readable: 90, sentence: 5, page: 8, practice: 2, repeats: 2, story words: 1 }
lessons:
  - name: "1"
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan]
    high-frequency words: [the, I]
    punctuation: ["."]
  - name: "2"
    spellings: [n as in nap, i as in sit]
    high-frequency words: [said, is]
    endings: [s]
    syllables: 2
  - name: "3"
    spellings: [igh as in light, k as in kit]
    punctuation: ["!", "?"]
`;

/** Sequences that stand beside the story in turn: sound ones, poor ones, broken ones. */
export const sequenceTexts: readonly string[] = [
  lessons,
  lessons.replace('igh as in light, ', '').replace('page: 8', 'page: 20'),
  lessons.replace('name: "2"', 'name: "two"'),
  lessons
    .replace('i as in sit]', 'i as in sit, e as in net, o as in pond, d as in sad]')
    .replace('    endings: [s]\n', ''),
  lessons
    .replace('a as in map, p as in pan', 'igh as in light, p as in pan')
    .replace('[said, is]', '[sat, map]'),
  `${lessons}  - name: "3"\n    spellings: [igh as in map\n`,
  lessons.replaceAll('\n', '\r\n'),
  'lessons: [',
  '',
];
