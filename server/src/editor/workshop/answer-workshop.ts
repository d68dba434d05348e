import type { Connection } from 'vscode-languageserver';
import type { Phonics } from '../../phonics/phonics.ts';
import type { WordFinders } from '../../words/word-finders.ts';
import type { Host } from '../host.ts';
import { once } from '../once.ts';
import type { Runner } from '../runner.ts';
import type { StoryOfSeries } from '../series/workspace-series.ts';
import type { Session } from '../session.ts';
import * as shapes from '../shapes.ts';
import { fileName } from '../uri.ts';
import { chainAnswer } from './chain-answer.ts';
import { collectionAnswer } from './collection-answer.ts';
import { fitAnswer } from './fit-answer.ts';
import { previewAnswer } from './preview-answer.ts';
import { printAnswer } from './print-answer.ts';
import { troubleOfCollection, troubleOfWish } from './print-order.ts';
import {
  type ChainAnswer,
  type ChainParams,
  chainRequest,
  type FitAnswer,
  type FitParams,
  fitRequest,
  type NoAnswer,
  type PreviewAnswer,
  type PreviewParams,
  type PrintAnswer,
  type PrintCollectionParams,
  type PrintParams,
  previewRequest,
  printCollectionRequest,
  printRequest,
  type WordsAnswer,
  type WordsParams,
  wordsRequest,
} from './protocol.ts';
import { StoryPictures } from './story-pictures.ts';
import { wordsAnswer } from './words-answer.ts';

type AnyAnswer = WordsAnswer | ChainAnswer | FitAnswer | PrintAnswer | PreviewAnswer;

const failed: NoAnswer = { message: 'That did not work; the log of the server says why.' };
const noStory: NoAnswer = {
  message: 'Open a story first: a markdown file that names its lesson at the top.',
};
const noPrinting: NoAnswer = { message: 'Nothing can be printed here.' };
const noSequence: NoAnswer = { message: 'There is no sequence.yaml beside this file or above it.' };

// What else is wrong with a wish is answered with a sentence, since it can be what somebody wrote.
const ofDocument = shapes.record({ uri: shapes.text });
const wordsShape = shapes.record({
  uri: shapes.text,
  limit: shapes.count,
  spelling: shapes.optional(shapes.text),
  sound: shapes.optional(shapes.text),
});
const chainShape = shapes.record({
  uri: shapes.text,
  length: shapes.count,
  seed: shapes.whole,
  start: shapes.optional(shapes.text),
});
const fitShape = shapes.record({ uri: shapes.text, text: shapes.text });
const previewShape = shapes.record({ uri: shapes.text, known: shapes.list(shapes.text) });

/** Answers what the views beside the text and the print commands ask for. */
export function answerWorkshop(
  connection: Connection,
  { phonics, printing }: Pick<Host, 'phonics' | 'printing'>,
  finders: WordFinders,
  runner: Runner,
  current: () => Session | undefined,
): void {
  const listen = <Params, Answer extends AnyAnswer>(
    method: string,
    doing: string,
    shape: shapes.Shape,
    answer: (params: Params, session: Session) => Promise<Answer | NoAnswer>,
  ): void => {
    connection.onRequest<AnyAnswer | NoAnswer, never>(
      method,
      runner.request<Params, Answer | NoAnswer>(doing, shape, failed, (params) => {
        const session = current();
        return session === undefined ? failed : answer(params, session);
      }),
    );
  };
  listen<WordsParams, WordsAnswer>(wordsRequest, 'finding words', wordsShape, async (params, session) => {
    const content = (await session.analysis(params.uri))?.content;
    if (content?.kind !== 'reviewed') return noReview(content);
    const finder = finders(content.sequenceFile.teaching);
    return wordsAnswer(params, content.review, finder, phonics, session.settings.sounds);
  });
  listen<ChainParams, ChainAnswer>(chainRequest, 'making a chain', chainShape, async (params, session) => {
    const content = (await session.analysis(params.uri))?.content;
    if (content?.kind !== 'reviewed') return noReview(content);
    const finder = finders(content.sequenceFile.teaching);
    return chainAnswer(params, content.review.taught, finder, phonics);
  });
  listen<FitParams, FitAnswer>(fitRequest, 'fitting a text', fitShape, async ({ uri, text }, session) => {
    if (text.length > session.settings.largestFile * 1024) return { message: 'The text is too long.' };
    const file = await session.sequenceFor(uri);
    return file === undefined ? noSequence : fitAnswer(text, file.teaching, phonics);
  });
  const pictures = new StoryPictures(connection);
  const previewer = once(async () => (await printing?.())?.createPreviewer());
  listen<PrintParams, PrintAnswer>(printRequest, 'printing', ofDocument, async (params, session) => {
    const content = (await session.analysis(params.uri))?.content;
    if (content?.kind !== 'reviewed') return noReview(content);
    if (printing === undefined) return noPrinting;
    const trouble = troubleOfWish(params);
    if (trouble !== undefined) return { message: trouble };
    const finder = finders(content.sequenceFile.teaching);
    // A print reads its pictures from the disk, whatever a preview has kept.
    const tools = { phonics, printing: await printing(), pictures: new StoryPictures(connection) };
    return printAnswer(params, content.review, finder, tools);
  });
  listen<PrintCollectionParams, PrintAnswer>(
    printCollectionRequest,
    'printing a collection',
    shapes.record({}),
    async (params, { stories: index }) => {
      if (printing === undefined || index === undefined) return noPrinting;
      const trouble = troubleOfCollection(params);
      if (trouble !== undefined) return { message: trouble };
      const series = await index.series();
      const stories: StoryOfSeries[] = [];
      for (const uri of params.uris) {
        const story = await series.story(uri);
        if (story === undefined) return { message: `${fileName(uri)} is no story with a lesson.` };
        stories.push(story);
      }
      const tools = { printing: await printing(), pictures: new StoryPictures(connection) };
      return collectionAnswer(params, stories, tools);
    },
  );
  listen<PreviewParams, PreviewAnswer>(
    previewRequest,
    'previewing',
    previewShape,
    async (params, session) => {
      const content = (await session.analysis(params.uri))?.content;
      if (content?.kind !== 'reviewed') return noReview(content);
      const preview = await previewer();
      if (printing === undefined || preview === undefined) return noPrinting;
      const trouble = troubleOfWish(params);
      if (trouble !== undefined) return { message: trouble };
      const finder = finders(content.sequenceFile.teaching);
      const tools = { phonics, printing: await printing(), pictures, previewer: preview };
      return previewAnswer(params, content.review, finder, tools);
    },
  );
}

function noReview(content: { readonly kind: string; readonly message?: string } | undefined): NoAnswer {
  return content?.kind === 'not-reviewed' && content.message ? { message: content.message } : noStory;
}

/** What the answers are made with. */
export interface PrintTools {
  readonly phonics: Phonics;
  readonly printing: Awaited<ReturnType<NonNullable<Host['printing']>>>;
  readonly pictures: StoryPictures;
}
