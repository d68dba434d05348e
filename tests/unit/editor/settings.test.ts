import { expect, test } from 'vitest';
import manifest from '../../../package.json' with { type: 'json' };
import { defaultSettings, readSettings } from '../../../server/src/editor/settings.ts';

test('the defaults are those of the manifest', () => {
  const { properties } = manifest.contributes.configuration;
  expect(properties['battledore.sounds'].default).toBe(defaultSettings.sounds);
  expect(properties['battledore.largestFile'].default).toBe(defaultSettings.largestFile);
});

test.each([
  [null, defaultSettings],
  ['ipa', defaultSettings],
  [
    { sounds: 'ipa', largestFile: 20 },
    { sounds: 'ipa', largestFile: 20 },
  ],
  [{ sounds: 'loud', largestFile: -1 }, defaultSettings],
  [
    { sounds: 'ipa', largestFile: '20' },
    { ...defaultSettings, sounds: 'ipa' },
  ],
])('%j is read as %j', (sent, settings) => {
  expect(readSettings(sent)).toEqual(settings);
});
