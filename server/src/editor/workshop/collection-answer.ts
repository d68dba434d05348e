import type { PrintedStory } from '../../materials/order.ts';
import { lineIndex } from '../../text/line-index.ts';
import type { StoryOfSeries } from '../series/workspace-series.ts';
import { fileName } from '../uri.ts';
import type { PrintTools } from './answer-workshop.ts';
import { toBase64 } from './base64.ts';
import type { NoAnswer, PrintAnswer, PrintCollectionParams } from './protocol.ts';

/** How many problems are told of at once. */
const mostTold = 4;

/** Stories as one book, in the order they are given; or what is wrong with them, and then there is no document. */
export async function collectionAnswer(
  { layout, paper }: Pick<PrintCollectionParams, 'layout' | 'paper'>,
  stories: readonly StoryOfSeries[],
  { printing, pictures }: Pick<PrintTools, 'printing' | 'pictures'>,
): Promise<PrintAnswer | NoAnswer> {
  const printed: PrintedStory[] = [];
  for (const { uri, review } of stories) {
    printed.push({ review, chain: [], pictures: await pictures.of(uri, review) });
  }
  const titles = new Set(stories.map(({ review }) => review.taught.sequence.title));
  const [title = 'Stories'] = titles.size === 1 ? titles : [];
  const order = { material: 'book', layout, paper, parts: new Set<never>(), title } as const;
  const { bytes, sides, problems } = printing.print({ ...order, stories: printed, fonts: printing.fonts });
  if (problems.length === 0) return { pdf: toBase64(bytes), sides };
  const told = problems.slice(0, mostTold).map(({ story, span, message }) => {
    const { uri = '', review } = stories[story] ?? {};
    const line = span && review && lineIndex(review.story.text)(span.start).line;
    return `${fileName(uri)}${line === undefined ? '' : `, line ${line}`}: ${message}`;
  });
  const rest = problems.length - told.length;
  return { message: `${told.join(' ')}${rest > 0 ? ` And ${rest} more.` : ''} Nothing was written.` };
}
