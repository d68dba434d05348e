import type { Previewer } from '../../materials/preview/previewer.ts';
import type { Review } from '../../review/review.ts';
import { lineIndex } from '../../text/line-index.ts';
import type { WordFinder } from '../../words/find-words.ts';
import type { PrintTools } from './answer-workshop.ts';
import { toBase64 } from './base64.ts';
import { printOrder } from './print-order.ts';
import type { PreviewAnswer, PreviewParams } from './protocol.ts';

/** A story as it would be printed, to be looked at; with its problems, since a draft in work has some most of the time. */
export async function previewAnswer(
  params: PreviewParams,
  review: Review,
  finder: WordFinder,
  { phonics, printing, pictures, previewer }: PrintTools & { readonly previewer: Previewer },
): Promise<PreviewAnswer> {
  const files = await pictures.of(params.uri, review);
  const order = printOrder(params, review, { finder, phonics, pictures: files, fonts: printing.fonts });
  const { document, problems, pictureAt } = previewer(order);
  const known = new Set(params.known);
  const shown = document.sides.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'picture' ? [mark.address] : [])),
  );
  const lineOf = lineIndex(review.story.text);
  return {
    document,
    pictures: [...new Set(shown)].map((address) => {
      const key = pictures.keyOf(address);
      const source = known.has(key) ? undefined : pictureAt(address);
      return source === undefined
        ? { address, key }
        : { address, key, data: { type: source.type, base64: toBase64(source.bytes) } };
    }),
    problems: problems.map(({ span, message }) =>
      span === undefined ? { message } : { line: lineOf(span.start).line, message },
    ),
  };
}
