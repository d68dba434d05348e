import type { Review } from '../../review/review.ts';
import { lineIndex } from '../../text/line-index.ts';
import type { WordFinder } from '../../words/find-words.ts';
import type { PrintTools } from './answer-workshop.ts';
import { toBase64 } from './base64.ts';
import { printOrder } from './print-order.ts';
import type { NoAnswer, PrintAnswer, PrintParams } from './protocol.ts';

/** A story as PDF; or what is wrong with it, and then there is no document. */
export async function printAnswer(
  params: PrintParams,
  review: Review,
  finder: WordFinder,
  { phonics, printing, pictures }: PrintTools,
): Promise<PrintAnswer | NoAnswer> {
  const files = await pictures.of(params.uri, review);
  const order = printOrder(params, review, { finder, phonics, pictures: files, fonts: printing.fonts });
  const { bytes, sides, problems } = printing.print(order);
  const [first] = problems;
  if (first === undefined) return { pdf: toBase64(bytes), sides };
  const lineOf = lineIndex(review.story.text);
  const told = problems.slice(0, 4).map(({ span, message }) => {
    return span === undefined ? message : `Line ${lineOf(span.start).line}: ${message}`;
  });
  return { message: `${told.join(' ')} Nothing was written.` };
}
