import type { Browser, Frame, Locator, Page } from 'playwright-core';

/** How the editor knows Battledore's status bar item. */
const statusItemId = 'battledore.battledore.battledore.readable';

/** The window of a VS Code workbench in a browser, in the words of someone who sits before it. */
export class Workbench {
  readonly page: Page;
  /** What went wrong in the page: errors of its console, uncaught errors, requests to other servers. */
  readonly troubles: string[] = [];

  private constructor(page: Page) {
    this.page = page;
    page.setDefaultTimeout(20_000);
  }

  /**
   * Opens a workbench and waits until its parts are there.
   *
   * @param allowed says which troubles belong to the host and not to us.
   */
  static async open(
    browser: Browser,
    address: string,
    allowed: (trouble: string) => boolean = () => false,
  ): Promise<Workbench> {
    const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
    const workbench = new Workbench(page);
    const note = (trouble: string) => {
      if (!allowed(trouble)) workbench.troubles.push(trouble.slice(0, 500));
    };
    page.on('console', (message) => {
      if (message.type() === 'error') note(`${message.text()} ${message.location().url}`);
    });
    page.on('pageerror', (error) => note(String(error)));
    page.on('request', (request) => {
      if (leavesTheMachine(request.url())) note(`request to ${request.url()}`);
    });
    await page.goto(address, { waitUntil: 'domcontentloaded' });
    await page.locator('.monaco-workbench .part.statusbar').waitFor({ timeout: 60_000 });
    return workbench;
  }

  /** Closes the page. */
  async close(): Promise<void> {
    await this.page.close();
  }

  /** Battledore's item in the status bar. */
  get status(): Locator {
    return this.page.locator(`.statusbar-item[id="${statusItemId}"]`);
  }

  /** Waits until the status bar shows a readable percent that satisfies a condition, and returns it. */
  async readable(condition: (percent: number) => boolean = () => true): Promise<number> {
    return until('the readable percent in the status bar', async () => {
      const percent = percentIn((await this.status.textContent({ timeout: 30_000 })) ?? '');
      return percent !== undefined && condition(percent) ? percent : undefined;
    });
  }

  /** The editor of a file. */
  editor(name: string): Locator {
    return this.page.locator(`.editor-instance .monaco-editor[data-uri$="/${name}"]`);
  }

  /** The wavy lines in the editor of a file that are in sight. */
  marks(name: string): Locator {
    return this.editor(name).locator('.squiggly-error, .squiggly-warning, .squiggly-info');
  }

  /** Puts the focus into the text of an open file. */
  async focusText(name: string): Promise<void> {
    await this.editor(name).locator('.view-lines').first().click();
  }

  /** Moves the caret; both count from 1. */
  async goTo(line: number, column: number): Promise<void> {
    await this.#ask('Control+G', `:${line}:${column}`);
    await this.page.keyboard.press('Enter');
    const position = this.page.locator('.statusbar-item[id="status.editor.selection"]');
    await position.filter({ hasText: `Ln ${line}, Col ${column}` }).waitFor();
  }

  /** Runs a command by its title. */
  async command(title: string): Promise<void> {
    await this.#ask('F1', `>${title}`);
    await this.page.locator('.quick-input-list .monaco-list-row').filter({ hasText: title }).first().click();
  }

  /** The page of the extension, in its frame, that shows an element of a selector. */
  async pageWith(selector: string): Promise<Frame> {
    return until(`a page with ${selector}`, async () => {
      for (const frame of this.page.frames()) {
        if (frame === this.page.mainFrame()) continue;
        const element = frame.locator(selector).first();
        if (await element.isVisible().catch(() => false)) return frame;
      }
      return undefined;
    });
  }

  /** Brings an open file to the front. */
  async showTab(name: string): Promise<void> {
    await this.page.locator(`.tab[data-resource-name="${name}"]`).click();
    await this.editor(name).waitFor();
  }

  /** The findings of Battledore in the Problems panel, as a screen reader would say them. */
  async problems(): Promise<readonly string[]> {
    const panel = this.page.locator('.markers-panel');
    if (!(await panel.isVisible())) await this.page.keyboard.press('Control+Shift+M');
    await panel.waitFor();
    const labels = await panel
      .locator('.monaco-list-row')
      .evaluateAll((rows) => rows.map((row) => row.getAttribute('aria-label') ?? ''));
    return labels.filter((label) => /battledore/i.test(label));
  }

  /** The text of the hover at the caret, once it holds a text. */
  async hover(expected: string | RegExp): Promise<string> {
    await this.page.keyboard.press('Control+K');
    await this.page.keyboard.press('Control+I');
    const hovers = this.page.locator('.monaco-hover:not(.hidden) .hover-contents');
    await hovers.filter({ hasText: expected }).first().waitFor();
    const text = (await hovers.allInnerTexts()).join('\n');
    return text;
  }

  /** Types at the caret. */
  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }

  /** Presses a key, some times over. */
  async press(key: string, times = 1): Promise<void> {
    for (let left = times; left > 0; left--) await this.page.keyboard.press(key);
  }

  /** Takes the quick fix with a title at the caret. */
  async quickFix(title: string): Promise<void> {
    const rows = this.page.locator('.action-widget .monaco-list-row.action');
    await until(`the quick fix “${title}”`, async () => {
      await this.page.keyboard.press('Control+.');
      await rows.filter({ hasText: title }).first().waitFor({ timeout: 1_500 });
      return true;
    });
    // By keyboard: a click is swallowed until the mouse has moved.
    const chosen = this.page.locator('.action-widget .monaco-list-row.action.focused').first();
    await this.#moveTo(
      title,
      () => chosen.textContent(),
      (text) => text.includes(title),
    );
    await this.page.keyboard.press('Enter');
    await rows.first().waitFor({ state: 'detached' });
  }

  /** Types a word but for its last letter and takes the word from the list of completion. */
  async complete(word: string): Promise<void> {
    await this.page.keyboard.type(word.slice(0, -1));
    const row = this.page.locator(`.suggest-widget.visible .monaco-list-row[aria-label^="${word}"]`);
    await until(`“${word}” in the list`, async () => {
      await this.page.keyboard.press('Control+Space');
      await row.first().waitFor({ timeout: 1_500 });
      return true;
    });
    const chosen = this.page.locator('.suggest-widget.visible .monaco-list-row.focused').first();
    await this.#moveTo(
      word,
      () => chosen.getAttribute('aria-label'),
      (label) => new RegExp(`^${word}\\b`).test(label),
    );
    await this.page.keyboard.press('Enter');
    await this.page.locator('.suggest-widget.visible').waitFor({ state: 'detached' });
  }

  /** Saves the file at the front and waits until it is saved. */
  async save(name: string): Promise<void> {
    const changed = this.page.locator(`.tab.dirty[data-resource-name="${name}"]`);
    // What was asked for last may not be in the text yet; a text without changes is saved as it is.
    await changed.waitFor({ timeout: 2_000 }).catch(() => undefined);
    await this.page.keyboard.press('Control+S');
    await changed.waitFor({ state: 'detached' });
  }

  /** Waits until the gauge view shows a readable percent that satisfies a condition, and returns it. */
  async gaugePercent(condition: (percent: number) => boolean): Promise<number> {
    return until('the readable percent in the gauge view', async () => {
      // Other views may be open beside the gauge: it is the one that speaks of readable words.
      for (const view of await this.page.locator('iframe.webview.ready').all()) {
        const body = view.contentFrame().locator('iframe#active-frame').contentFrame().locator('body');
        const text = (await body.textContent({ timeout: 2_000 })) ?? '';
        const percent = text.includes('Readable words') ? percentIn(text) : undefined;
        if (percent !== undefined && condition(percent)) return percent;
      }
      return undefined;
    });
  }

  /** Clicks the button of the gauge view whose text holds `text`, once it is there. */
  async clickInGauge(text: string): Promise<void> {
    await until(`“${text}” in the gauge view`, async () => {
      for (const view of await this.page.locator('iframe.webview.ready').all()) {
        const body = view.contentFrame().locator('iframe#active-frame').contentFrame().locator('body');
        const button = body.locator('button').filter({ hasText: text });
        if (!(await button.isVisible({ timeout: 2_000 }))) continue;
        await button.click({ timeout: 2_000 });
        return true;
      }
      return undefined;
    });
  }

  /**
   * Moves down a list until the wanted row is the chosen one, and stays it: on a busy machine a list is drawn late or drawn
   * anew, and Enter would take another row.
   */
  async #moveTo(
    what: string,
    read: () => Promise<string | null>,
    wanted: (row: string) => boolean,
  ): Promise<void> {
    let before: string | undefined;
    await until(`“${what}” to be chosen`, async () => {
      const row = (await read()) ?? '';
      const settled = row === before;
      before = row;
      if (!settled) {
        await this.page.waitForTimeout(50);
        return undefined;
      }
      if (wanted(row)) return true;
      await this.page.keyboard.press('ArrowDown');
      return undefined;
    });
  }

  /** Opens an input box by a key and fills it; a late change of focus may close it, so it is tried again. */
  async #ask(key: string, text: string): Promise<void> {
    const input = this.page.locator('.quick-input-widget input[type="text"]');
    for (let attempt = 1; ; attempt++) {
      await this.page.keyboard.press(key);
      try {
        await input.waitFor({ timeout: 2_000 });
        await input.fill(text, { timeout: 2_000 });
        return;
      } catch (error) {
        if (attempt === 5) throw error;
      }
    }
  }
}

/**
 * Asks again and again until there is an answer.
 *
 * @throws Error that names what was waited for, after 20 seconds.
 */
export async function until<Answer>(what: string, ask: () => Promise<Answer | undefined>): Promise<Answer> {
  let problem: unknown;
  for (const end = Date.now() + 20_000; Date.now() < end; ) {
    try {
      const answer = await ask();
      if (answer !== undefined) return answer;
    } catch (error) {
      problem = error;
    }
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error(`Waited in vain for ${what}.${problem instanceof Error ? ` ${problem.message}` : ''}`);
}

function percentIn(text: string): number | undefined {
  const figure = /(\d+(?:\.\d+)?)\s*%/.exec(text.replace(/\u00a0/g, ' '))?.[1];
  return figure === undefined ? undefined : Number(figure);
}

function leavesTheMachine(address: string): boolean {
  const { protocol, hostname } = new URL(address);
  if (protocol !== 'http:' && protocol !== 'https:' && protocol !== 'ws:' && protocol !== 'wss:')
    return false;
  // Resources of a webview have an invented name; a service worker in the page answers for it.
  return hostname !== '127.0.0.1' && !hostname.endsWith('.vscode-resource.vscode-cdn.net');
}
