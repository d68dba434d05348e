import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import type { Checks } from './checks.ts';
import { until, type Workbench } from './workbench.ts';
import { openView } from './workshop-checks.ts';

/** The samples' draft: it falls short on purpose. */
export const draftName = '14-draft-the-long-pink-sock.md';

/**
 * From the failing draft to a passing story without leaving the editor: quick fixes for what is marked, and words taken
 * from completion or the word finder where a sentence has to be written anew. Nothing else is typed but the small words in
 * between, the marks, and the first letters of words.
 */
export async function checkRevising(checks: Checks, workbench: Workbench, folder: string): Promise<void> {
  const draft = new Draft(workbench, join(folder, draftName));

  await checks.check('the draft falls short', async () => {
    await workbench.editor(draftName).waitFor({ timeout: 60_000 });
    const percent = await workbench.readable();
    if (percent >= 95) throw new Error(`${percent} % are readable.`);
    return `${percent} %`;
  });

  await checks.check('quick fixes mend what they can', async () => {
    await draft.fix('author', 'Remove “author”');
    await draft.fix('scarf:', 'Remove the story word “scarf”');
    await draft.fix('…', 'Write a full stop for “…”');
    await draft.fix('lunch!"', 'Replace with “ham”');
    await draft.fix('chin', 'Replace with “lip”');
  });

  await checks.check(
    'sentences are written anew with words from completion and the word finder',
    async () => {
      await draft.rewrite('She sits and clicks the needles.', 'She sits and +hums.');
      await draft.rewrite(
        'It is a long sock for your goat to put on when the wind is cold.',
        'I +want to +put it on +your *pi-g.',
      );
      await draft.rewrite('Nod wished for lunch!', '"I +want +your +ham!" +said Nod.');
      await draft.rewrite(
        'He bit the sock, and the sock went in and in, inch by inch, with a glomp and a gulp.',
        'Nod +put the +long +pink +thing in. It #sa-nk and +sank.',
      );
    },
  );

  await checks.check('what is left is mended by quick fixes', async () => {
    await draft.fix('needles:', 'Remove the story word “needles”');
    await draft.fix('sank and', 'Begin a new page here');
  });

  await checks.check('the story passes', async () => {
    await workbench.readable((percent) => percent >= 95);
    await until('no problems', async () => ((await workbench.problems()).length === 0 ? true : undefined));
    await draft.save();
    draft.expect('Nod put the long pink thing in.');
  });
}

/** The draft as it lies on the disk, saved after every step so that places can be found in it. */
class Draft {
  readonly #workbench: Workbench;
  readonly #file: string;

  constructor(workbench: Workbench, file: string) {
    this.#workbench = workbench;
    this.#file = file;
  }

  text(): string {
    return readFileSync(this.#file, 'utf8');
  }

  /** @throws Error that shows the draft, unless a sentence stands in it on the disk. */
  expect(sentence: string): void {
    const text = this.text();
    if (!text.includes(sentence)) throw new Error(`“${sentence}” is not on the disk:\n${text}`);
  }

  async save(): Promise<void> {
    await this.#workbench.save(draftName);
  }

  /** Puts the caret on the first place of some text and takes a quick fix by its title. */
  async fix(at: string, title: string): Promise<void> {
    await this.#caretAt(at, 1);
    await this.#workbench.quickFix(title);
    await this.save();
  }

  /**
   * Selects a sentence and writes another; a word with + before it is taken from the list of completion, one with * from the
   * word finder by a click, one with # from there by a key: what is asked for there stands behind a hyphen.
   */
  async rewrite(sentence: string, words: string): Promise<void> {
    await this.#caretAt(sentence, 0);
    await this.#workbench.press('Shift+ArrowRight', sentence.length);
    await this.#workbench.press('Delete');
    for (const piece of words.split(/([+*#][\w-]+)/)) {
      const word = piece.slice(1);
      if (piece.startsWith('+')) await this.#workbench.complete(word);
      else if (piece.startsWith('*')) await this.#find(word, (button) => button.click());
      else if (piece.startsWith('#')) await this.#find(word, (button) => button.press('Enter'));
      else if (piece !== '') await this.#workbench.type(piece);
    }
    await this.save();
    this.expect(words.replace(/[+*#-]/g, ''));
  }

  /** Looks a word up in the word finder by the spelling it ends in, and has it written at the caret. */
  async #find(divided: string, take: (button: Locator) => Promise<void>): Promise<void> {
    const [, ending = ''] = divided.split('-');
    const word = divided.replace('-', '');
    const shown = this.#workbench.editor(draftName).locator('.view-lines');
    const times = async () => ((await shown.textContent()) ?? '').split(word).length;
    const before = await times();
    const view = await openView(this.#workbench, 'Words', 'words');
    await view.getByRole('textbox', { name: 'Spelling', exact: true }).fill(ending);
    await view.getByRole('combobox', { name: 'Place', exact: true }).selectOption('end');
    await take(view.getByRole('button', { name: new RegExp(`^${word}(?!\\w)`) }).first());
    await until(`“${word}” in the story`, async () => ((await times()) > before ? true : undefined));
    // A click into the text would move the caret.
    await this.#workbench.command('View: Focus Active Editor Group');
  }

  async #caretAt(found: string, after: number): Promise<void> {
    const text = this.text();
    const at = text.indexOf(found);
    if (at < 0) throw new Error(`“${found}” is not in the draft:\n${text}`);
    const before = text.slice(0, at).split('\n');
    await this.#workbench.focusText(draftName);
    await this.#workbench.goTo(before.length, (before.at(-1)?.length ?? 0) + 1 + after);
  }
}
