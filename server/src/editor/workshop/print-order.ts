import type { FontBytes } from '../../materials/layout/font-files.ts';
import { layouts, papers } from '../../materials/layout/paper.ts';
import { lessonChain } from '../../materials/lesson-chain.ts';
import { materials, type PictureFile, type PrintOrder, practiceParts } from '../../materials/order.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import type { Review } from '../../review/review.ts';
import type { WordFinder } from '../../words/find-words.ts';
import * as shapes from '../shapes.ts';
import type { PrintCollectionParams, PrintParams } from './protocol.ts';

/** What an order is made of beside the wish. */
export interface OrderMatter {
  readonly finder: WordFinder;
  readonly phonics: Phonics;
  readonly pictures: ReadonlyMap<string, PictureFile>;
  readonly fonts: FontBytes;
}

/** The order that prints a story as it is wished. */
export function printOrder(
  { material, layout, paper, parts }: PrintParams,
  review: Review,
  { finder, phonics, pictures, fonts }: OrderMatter,
): PrintOrder {
  const chain = material === 'book' ? [] : lessonChain(finder, review.taught, phonics);
  return {
    material,
    layout: material === 'book' ? layout : 'page',
    paper,
    parts: new Set(practiceParts.filter((part) => parts.includes(part))),
    title: review.taught.sequence.title ?? 'Stories',
    stories: [{ review, chain, pictures }],
    fonts,
  };
}

/** What of a wish cannot be printed, as a sentence; nothing for one that can. Whoever speaks the protocol may send anything. */
export function troubleOfWish(wish: unknown): string | undefined {
  const { material, parts } = (wish ?? {}) as Partial<Record<keyof PrintParams, unknown>>;
  return (
    troubleOfChoice('material', material, materials) ??
    troubleOfSheets(wish) ??
    (Array.isArray(parts) ? undefined : 'The parts have to be a list.')
  );
}

/** The same of a wish for a collection. */
export function troubleOfCollection(wish: unknown): string | undefined {
  const { uris } = (wish ?? {}) as Partial<Record<keyof PrintCollectionParams, unknown>>;
  const isList = Array.isArray(uris) && uris.length > 0 && shapes.list(shapes.text)(uris);
  return isList ? troubleOfSheets(wish) : 'A collection wants at least one story.';
}

function troubleOfSheets(wish: unknown): string | undefined {
  const { layout, paper } = (wish ?? {}) as Partial<Record<keyof PrintParams, unknown>>;
  return troubleOfChoice('layout', layout, layouts) ?? troubleOfChoice('paper', paper, papers);
}

function troubleOfChoice(name: string, value: unknown, known: readonly string[]): string | undefined {
  const isKnown = known.some((each) => each === value);
  return isKnown ? undefined : `The ${name} has to be one of ${known.join(', ')}.`;
}
