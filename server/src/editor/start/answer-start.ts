import type { Connection } from 'vscode-languageserver';
import type { Phonics } from '../../phonics/phonics.ts';
import { newStory } from '../../start/new-story.ts';
import { sequenceAsCsv } from '../../start/sequence-csv.ts';
import type { WordFinders } from '../../words/word-finders.ts';
import type { Runner } from '../runner.ts';
import type { Session } from '../session.ts';
import * as shapes from '../shapes.ts';
import { importAnswer } from './import-answer.ts';
import {
  type ImportSequenceAnswer,
  type ImportSequenceParams,
  importSequenceRequest,
  type NewStoryAnswer,
  type NewStoryParams,
  newStoryRequest,
  type SequenceAnswer,
  type SequenceParams,
  sequenceRequest,
} from './protocol.ts';

/** Answers what the commands ask for that begin stories and sequences and take sequences to a spreadsheet and back. */
export function answerStart(
  connection: Connection,
  phonics: Phonics,
  finders: WordFinders,
  runner: Runner,
  current: () => Session | undefined,
): void {
  connection.onRequest<SequenceAnswer | null, never>(
    sequenceRequest,
    runner.request<SequenceParams, SequenceAnswer | null>(
      'a sequence',
      shapes.record({ uri: shapes.text }),
      null,
      async ({ uri }) => {
        const file = await current()?.sequenceFor(uri);
        if (file === undefined) return null;
        const { sequence } = file.teaching;
        const lessons = sequence.lessons.map(({ name, title }) => ({ name, ...(title && { title }) }));
        return { lessons, csv: sequenceAsCsv(sequence) };
      },
    ),
  );
  connection.onRequest<NewStoryAnswer | null, never>(
    newStoryRequest,
    runner.request<NewStoryParams, NewStoryAnswer | null>(
      'a new story',
      shapes.record({ uri: shapes.text, title: shapes.text, lesson: shapes.text, pages: shapes.count }),
      null,
      async ({ uri, ...wish }) => {
        const file = await current()?.sequenceFor(uri);
        const taught = file?.teaching.taughtAt(wish.lesson);
        if (file === undefined || taught === undefined) return null;
        return newStory(wish, taught, finders(file.teaching), phonics);
      },
    ),
  );
  connection.onRequest<ImportSequenceAnswer | null, never>(
    importSequenceRequest,
    runner.request<ImportSequenceParams, ImportSequenceAnswer | null>(
      'a table of lessons',
      shapes.record({ text: shapes.text, uses: shapes.optional(shapes.list(shapes.text)) }),
      null,
      async (params) => importAnswer(params, phonics),
    ),
  );
}
