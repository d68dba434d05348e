import type { Phonics } from '../phonics/phonics.ts';
import type { FoundWord } from '../words/found-word.ts';
import type { WordPlace } from '../words/word-query.ts';
import type { ChainStep } from './chain.ts';

/** A word with the words that are one step away. */
export interface GraphNode {
  readonly found: FoundWord;
  readonly links: readonly GraphLink[];
}

/** A step to another word, by its place among the nodes. */
export interface GraphLink {
  readonly to: number;
  readonly step: ChainStep;
}

/**
 * Links words that differ by one grapheme: changed, added or dropped. A grapheme is its letters with the class of its
 * sounds, so *his* and *hit* differ by one and *wash* and *cash* by two; a split one (a_e) is one.
 */
export function linkWords(words: readonly FoundWord[], phonics: Phonics): readonly GraphNode[] {
  const rows = words.map(({ reading }) => {
    const parts = reading?.parts ?? [];
    return {
      letters: parts.map(({ letters }) => letters),
      keys: parts.map((part) => `${part.letters}=${phonics.soundClass(part.letters, part.sounds)}`),
    };
  });
  const links = words.map((): GraphLink[] => []);
  const link = (from: number, to: number, step: ChainStep): void => {
    links[from]?.push({ to, step });
  };
  const whole = new Map<string, number[]>();
  const gapped = new Map<string, { readonly word: number; readonly at: number }[]>();
  rows.forEach(({ keys }, word) => {
    append(whole, keys.join(' '), word);
    keys.forEach((_, at) => {
      append(gapped, [...keys.slice(0, at), '?', ...keys.slice(at + 1)].join(' '), { word, at });
    });
  });
  for (const members of gapped.values()) {
    for (const { word: left, at } of members) {
      for (const { word: right } of members) {
        const from = rows[left]?.letters[at];
        const to = rows[right]?.letters[at];
        if (left === right || from === undefined || to === undefined || from === to) continue;
        link(left, right, { kind: 'change', place: placeOf(at, rows[left]?.keys.length ?? 0), at, from, to });
      }
    }
  }
  rows.forEach(({ keys, letters }, longer) => {
    keys.forEach((key, at) => {
      // Of two like graphemes side by side either may go; once is enough.
      if (key === keys[at - 1]) return;
      const place = placeOf(at, keys.length);
      const gone = letters[at] ?? '';
      for (const shorter of whole.get([...keys.slice(0, at), ...keys.slice(at + 1)].join(' ')) ?? []) {
        link(longer, shorter, { kind: 'drop', place, at, from: gone });
        link(shorter, longer, { kind: 'add', place, at, to: gone });
      }
    });
  });
  return words.map((found, word) => ({ found, links: links[word] ?? [] }));
}

function placeOf(at: number, count: number): WordPlace {
  return at === 0 ? 'start' : at === count - 1 ? 'end' : 'middle';
}

function append<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const known = lists.get(key);
  if (known === undefined) lists.set(key, [item]);
  else known.push(item);
}
