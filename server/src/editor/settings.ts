import type { Settings } from './protocol.ts';

/** What holds when the client says nothing. The manifest's defaults are the same, by test. */
export const defaultSettings: Settings = { sounds: 'dictionary', largestFile: 1000 };

/** The section of the client's settings that is ours. */
export const settingsSection = 'battledore';

/** Reads what a client sent for the section; whatever is absent or unusable has its default. */
export function readSettings(sent: unknown): Settings {
  const given = isRecord(sent) ? sent : {};
  const { sounds, largestFile } = given;
  return {
    sounds: sounds === 'ipa' || sounds === 'dictionary' ? sounds : defaultSettings.sounds,
    largestFile:
      typeof largestFile === 'number' && Number.isFinite(largestFile) && largestFile > 0
        ? largestFile
        : defaultSettings.largestFile,
  };
}

/** True for an object whose members can be looked at. */
export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
