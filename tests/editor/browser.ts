import { type Browser, chromium } from 'playwright-core';
import { findProgram, tryToInstall } from './debian.ts';

const browserNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * Starts a Chromium of this machine, without a window. It is installed first where that can be done.
 *
 * @throws Error with a sentence for people when there is none.
 */
export async function launchBrowser(say: (line: string) => void): Promise<Browser> {
  if (findBrowser() === undefined) tryToInstall(['chromium'], say);
  const executablePath = findBrowser();
  if (executablePath === undefined) {
    throw new Error(
      'The editor tests need Chromium or Chrome on the search path (Debian: apt-get install chromium), or its place in the environment variable CHROMIUM.',
    );
  }
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

function findBrowser(): string | undefined {
  return process.env.CHROMIUM ?? findProgram(...browserNames);
}
