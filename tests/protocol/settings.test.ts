import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Settings } from '../../server/src/editor/protocol.ts';
import { defaultSettings, settingsSection } from '../../server/src/editor/settings.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, sitDown } from '../support/writing-desk.ts';

const path = '/lane/nap.md';
const body = `The man sat. ${'The man sat. '.repeat(100)}`;

/** What a writer sees of each setting, as it is by default and after a change. A new setting does not compile without a row. */
const effects: {
  readonly [Name in keyof Settings]: {
    readonly changed: Settings[Name];
    readonly seen: (desk: Desk) => Promise<string>;
    readonly before: RegExp;
    readonly after: RegExp;
  };
} = {
  sounds: {
    changed: 'ipa',
    seen: (desk) => desk.hoverText(path, 'man'),
    before: /ă/,
    after: /æ/,
  },
  largestFile: {
    changed: 1,
    seen: async (desk) => (await desk.messages(path)).join(' '),
    before: /^This page has 303 words/,
    after: /battledore\.largestFile/,
  },
};

test.each(Object.entries(effects))(
  '%s changes what is seen, and back, while a story is open',
  async (name, { changed, seen, before, after }) => {
    const desk = await sitDown({
      phonics: packagePhonics,
      files: { '/lane/sequence.yaml': smallSequence },
    });
    await desk.open(path, storyAt('1', body));
    expect(await seen(desk)).toMatch(before);
    await desk.changeSettings({ ...defaultSettings, [name]: changed });
    expect(await seen(desk)).toMatch(after);
    await desk.changeSettings(defaultSettings);
    expect(await seen(desk)).toMatch(before);
  },
);

test('the README has every setting', () => {
  const page = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  for (const name of Object.keys(effects)) expect(page).toContain(`\`${settingsSection}.${name}\``);
});
