import { buildChain } from '../../chains/build-chain.ts';
import type { PictureFile } from '../../materials/order.ts';
import type { Review } from '../../review/review.ts';
import { lineIndex } from '../../text/line-index.ts';
import type { WordFinder } from '../../words/find-words.ts';
import type { PrintTools } from './answer-workshop.ts';
import { fromBase64, toBase64 } from './base64.ts';
import {
  type NoAnswer,
  type PrintAnswer,
  type PrintParams,
  type ReadPicturesParams,
  type ReadPicturesResult,
  readPicturesRequest,
} from './protocol.ts';

/** How many words the chain of a lesson has, and its seed: those of the command line. */
const chainWish = { length: 8, seed: 1, includesForms: false };

/** A story as PDF; or what is wrong with it, and then there is no document. */
export async function printAnswer(
  { uri, material, layout, paper, parts }: PrintParams,
  review: Review,
  finder: WordFinder,
  { connection, phonics, printing }: PrintTools,
): Promise<PrintAnswer | NoAnswer> {
  const { links } =
    material === 'book' ? { links: [] } : buildChain(finder, review.taught, phonics, chainWish);
  const chain = links.map(({ found: { word, reading } }) => ({
    word,
    graphemes: (reading?.parts ?? []).map(({ letters }) => letters),
  }));
  const pictures = await readPictures(uri, review, connection);
  const { bytes, sides, problems } = printing.print({
    material,
    layout: material === 'book' ? layout : 'page',
    paper,
    parts: new Set(parts),
    title: review.taught.sequence.title ?? 'Stories',
    stories: [{ review, chain, pictures }],
    fonts: printing.fonts,
  });
  const [first] = problems;
  if (first === undefined) return { pdf: toBase64(bytes), sides };
  const lineOf = lineIndex(review.story.text);
  const told = problems.slice(0, 4).map(({ span, message }) => {
    return span === undefined ? message : `Line ${lineOf(span.start).line}: ${message}`;
  });
  return { message: `${told.join(' ')} Nothing was written.` };
}

async function readPictures(
  uri: string,
  { story }: Review,
  connection: PrintTools['connection'],
): Promise<ReadonlyMap<string, PictureFile>> {
  const shown = story.pages.flatMap(({ page }) => page.illustrations.map(({ address }) => address));
  const addresses = [...new Set(shown)].filter((address) => address !== '');
  if (addresses.length === 0) return new Map();
  const params: ReadPicturesParams = { uri, addresses };
  const read = await connection.sendRequest<ReadPicturesResult>(readPicturesRequest, params);
  return new Map(
    addresses.map((address, index): [string, PictureFile] => {
      const file = read[index] ?? { trouble: 'cannot be read' };
      return [address, 'base64' in file ? { bytes: fromBase64(file.base64) } : file];
    }),
  );
}
