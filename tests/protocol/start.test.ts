import { expect, test } from 'vitest';
import { type SequenceAnswer, sequenceRequest } from '../../server/src/editor/start/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence } from '../support/small-lane.ts';
import { sitDown, uriOf } from '../support/writing-desk.ts';

const sequenceOf = async (path: string): Promise<SequenceAnswer | null> => {
  const desk = await sitDown({ phonics: packagePhonics, files: { '/lane/sequence.yaml': smallSequence } });
  return desk.connection.sendRequest(sequenceRequest, { uri: uriOf(path) });
};

test('the lessons that a new story may choose from, though no file is open', async () => {
  const answer = await sequenceOf('/lane/new/sequence.yaml');
  expect(answer?.lessons[0]?.name).toBe('1');
  expect(answer?.csv.split('\r\n')).toHaveLength((answer?.lessons.length ?? 0) + 2);
});

test('no sequence, no answer', async () => {
  expect(await sequenceOf('/elsewhere/sequence.yaml')).toBeNull();
});
