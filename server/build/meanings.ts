import type { SpeechPart, Synset, WordNet } from './word-net.ts';

/** A word that can stand for another. */
export interface Kin {
  readonly word: string;
  /** Above 0, at most 1: 1 for the only meaning of both. */
  readonly closeness: number;
  /** For verbs, what may follow in that meaning. */
  readonly frames: Frames;
}

/** What may follow a verb. */
export interface Frames {
  readonly object: boolean;
  readonly nothing: boolean;
  readonly place: boolean;
}

/** Most words that are kept for one word in one part of speech. */
const most = 24;
/** What is less close is not kept. */
const least = 0.2;

/**
 * The words of `targets` that come near a word in meaning, closest first: words of the same meaning, broader, narrower
 * and sister words, adjectives that WordNet lists as similar. A pair of senses counts less the rarer the
 * sense is beside the word's commonest, and by (a root of) the share of the target in that sense and as this part of speech (`shareOf`, 0 to
 * 1): *crab* is hardly ever a verb. Common classes are weighed by how few of the `targets` they hold.
 */
export function createMeanings(
  wordNet: WordNet,
  targets: readonly string[],
  shareOf: (word: string, part: SpeechPart) => number,
): (word: string, part: SpeechPart) => readonly Kin[] {
  const { synsets, sensesOf, opposites } = wordNet;
  const targetsAt = new Map<string, { readonly word: string; readonly share: number }[]>();
  for (const word of targets) {
    for (const part of ['noun', 'verb', 'adj', 'adv'] as const) {
      const inPart = shareOf(word, part);
      for (const sense of sensesOf(word, part)) {
        const share = sense.share * inPart;
        if (share < 0.04) continue;
        const { synset } = sense;
        targetsAt.set(synset, [...(targetsAt.get(synset) ?? []), { word, share }]);
      }
    }
  }
  const narrower = (key: string): readonly string[] => relatedTo(synsets.get(key), ['~']);
  const broader = (key: string): readonly string[] => relatedTo(synsets.get(key), ['@']);
  const spread = new Map<string, number>();
  /** How much target use lies in a class, all classes below it included. */
  const spreadOf = (key: string): number => {
    const known = spread.get(key);
    if (known !== undefined) return known;
    spread.set(key, 0);
    const own = (targetsAt.get(key) ?? []).reduce((sum, { share }) => sum + share, 0);
    const sum = narrower(key).reduce((total, child) => total + spreadOf(child), own);
    spread.set(key, sum);
    return sum;
  };

  const belows = new Map<string, ReadonlyMap<string, number>>();
  /** The sets below a class that hold targets, with how many steps down they are. */
  const below = (key: string, reach: number): ReadonlyMap<string, number> => {
    const known = belows.get(key);
    if (known !== undefined) return known;
    const found = new Map<string, number>();
    let level = narrower(key);
    for (let down = 1; down <= reach && level.length > 0; down++) {
      for (const each of level) if (targetsAt.has(each) && !found.has(each)) found.set(each, down);
      level = level.flatMap(narrower);
    }
    belows.set(key, found);
    return found;
  };

  /** Every set that is near, with how near: 1 for the set itself. */
  const near = (key: string): ReadonlyMap<string, number> => {
    const found = new Map<string, number>();
    const add = (set: string, closeness: number): void => {
      if ((found.get(set) ?? 0) < closeness) found.set(set, closeness);
    };
    add(key, 1);
    const synset = synsets.get(key);
    if (synset === undefined) return found;
    if (synset.part === 'adj') {
      const heads = synset.isSatellite ? relatedTo(synset, ['&']) : [key];
      for (const head of heads) {
        add(head, 0.8);
        for (const each of relatedTo(synsets.get(head), ['&'])) add(each, head === key ? 0.75 : 0.55);
        for (const each of relatedTo(synsets.get(head), ['^'])) add(each, head === key ? 0.5 : 0.35);
      }
      return found;
    }
    for (const each of relatedTo(synset, ['$'])) add(each, 0.8);
    for (const each of relatedTo(synset, ['^'])) add(each, 0.4);
    const reach = synset.part === 'noun' ? 6 : 2;
    let level: readonly string[] = [key];
    for (let up = 0; up <= reach && level.length > 0; up++) {
      for (const ancestor of level) addBelow(ancestor, up, synset.part, add);
      level = level.flatMap(broader);
    }
    return found;
  };

  const addBelow = (
    ancestor: string,
    up: number,
    part: SpeechPart,
    add: (set: string, closeness: number) => void,
  ): void => {
    const held = spreadOf(ancestor);
    // Broad classes such as “object” or “change” tell nothing.
    const narrowness = synsets.get(ancestor)?.words.some((word) => tooBroad.has(word))
      ? 0
      : 1 - Math.log(1 + held) / Math.log(1 + (part === 'noun' ? 400 : 120));
    if (up > 0) {
      const isNearest = up === 1 ? 0.8 : 0.6 ** (up - 1) * 0.8;
      add(ancestor, isNearest * Math.max(0.25, Math.min(narrowness + 0.3, 1)));
    }
    if (up > 0 && narrowness <= 0) return;
    for (const [each, down] of below(ancestor, part === 'noun' ? 5 : 2)) {
      add(
        each,
        up === 0
          ? ([0, 0.75, 0.6, 0.5, 0.45, 0.4][down] ?? 0)
          : 0.62 * narrowness ** 0.8 * 0.9 ** (up + down - 2),
      );
    }
  };

  return (word, part) => {
    const best = new Map<string, Kin>();
    const senses = sensesOf(word, part);
    const top = Math.max(0, ...senses.map(({ share }) => share));
    for (const { synset, share } of senses) {
      if (share < 0.04) continue;
      const inWord = (share / top) ** 0.8;
      for (const [set, closeness] of near(synset)) {
        for (const target of targetsAt.get(set) ?? []) {
          if (target.word === word || opposites.has(`${word} ${target.word}`)) continue;
          const weight = closeness * inWord * target.share ** 0.7;
          const known = best.get(target.word);
          if (weight < least || (known !== undefined && known.closeness >= weight)) continue;
          best.set(target.word, {
            word: target.word,
            closeness: weight,
            frames: framesOf(synsets.get(set)),
          });
        }
      }
    }
    return [...best.values()]
      .sort((one, other) => other.closeness - one.closeness || (one.word < other.word ? -1 : 1))
      .slice(0, most);
  };
}

/** Classes by what their members are made of, or how they lie: a forest and a heap are both collections. */
const tooBroad: ReadonlySet<string> = new Set([
  'aggregation',
  'assemblage',
  'attribute',
  'measure',
  'part',
  'piece',
  'portion',
  'position',
  'property',
  'state',
]);

function relatedTo(synset: Synset | undefined, signs: readonly string[]): readonly string[] {
  return signs.flatMap((sign) => synset?.related.get(sign) ?? []);
}

function framesOf(synset: Synset | undefined): Frames {
  const has = (...numbers: readonly number[]): boolean =>
    synset?.frames.some((frame) => numbers.includes(frame)) === true;
  return {
    object: has(8, 9, 10, 11, 14, 15, 16, 17, 18, 19, 20, 21, 31),
    nothing: has(1, 2, 3, 23),
    place: has(4, 12, 13, 22, 27),
  };
}
