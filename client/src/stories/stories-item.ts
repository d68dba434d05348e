import { Disposable, l10n, StatusBarAlignment, type StatusBarItem, window } from 'vscode';
import type { StoriesParams } from '../../../server/src/editor/protocol.ts';

/** While a sequence is in the active editor: how many stories of the workspace fall short, in the status bar. */
export class StoriesItem implements Disposable {
  readonly #item: StatusBarItem = window.createStatusBarItem(
    'battledore.stories',
    StatusBarAlignment.Right,
    100,
  );
  readonly #subscriptions: Disposable;
  #latest: StoriesParams | undefined;
  #shown = '';
  #isSequence = false;

  constructor() {
    this.#item.name = l10n.t('Battledore: Stories That Fall Short');
    this.#item.command = 'battledore.failingStories';
    this.#subscriptions = Disposable.from(
      this.#item,
      window.onDidChangeActiveTextEditor(() => this.#update()),
    );
  }

  /** Takes in what the server said. */
  show(latest: StoriesParams): void {
    this.#latest = latest;
    this.#update();
  }

  /** Takes the item away. */
  dispose(): void {
    this.#subscriptions.dispose();
  }

  #update(): void {
    // While a page of a view has the focus there is no active editor; the text at hand stays what it was.
    const document = window.activeTextEditor?.document;
    if (document !== undefined) this.#isSequence = document.languageId === 'yaml';
    const latest = this.#latest;
    if (!this.#isSequence || latest === undefined || latest.stories === 0) {
      this.#item.hide();
      return;
    }
    const { failing, stories, turned, leftOut } = latest;
    const text =
      failing.length === 0
        ? l10n.t('{0} stories pass', stories)
        : l10n.t('{0} of {1} stories fall short', failing.length, stories);
    const lost = turned.filter(({ turn }) => turn === 'loses').map(({ title }) => title);
    const lines = [
      text,
      ...(lost.length === 0 ? [] : [l10n.t('Since the last change: {0}', lost.slice(0, 10).join(', '))]),
      ...(leftOut === 0
        ? []
        : [l10n.t('{0} files are left out: there are too many, or they are too long.', leftOut)]),
    ];
    const tooltip = lines.join('\n');
    if (this.#shown !== tooltip) {
      this.#shown = tooltip;
      this.#item.text = `$(book) ${text}`;
      this.#item.tooltip = tooltip;
      this.#item.accessibilityInformation = { label: tooltip };
    }
    this.#item.show();
  }
}
