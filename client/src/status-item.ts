import { Disposable, l10n, MarkdownString, StatusBarAlignment, type StatusBarItem, window } from 'vscode';
import { type StatusText, type StatusTooltip, statusText } from './gauge/status-text.ts';
import type { GaugeStore } from './gauge-store.ts';

/** The readable percent in the status bar, for the story in the active editor; away for every other file. */
export class StatusItem implements Disposable {
  readonly #gauges: GaugeStore;
  readonly #item: StatusBarItem;
  readonly #subscriptions: Disposable;
  #shown: string | undefined;

  /** @param gauges where the figures come from; not disposed here. */
  constructor(gauges: GaugeStore) {
    this.#gauges = gauges;
    this.#item = window.createStatusBarItem('battledore.readable', StatusBarAlignment.Right, 100);
    this.#item.name = l10n.t('Battledore: Readable Words');
    this.#subscriptions = Disposable.from(
      this.#item,
      gauges.onDidChange(() => this.#update()),
      window.onDidChangeActiveTextEditor(() => this.#update()),
    );
    this.#update();
  }

  /** Takes the item away. */
  dispose(): void {
    this.#subscriptions.dispose();
  }

  #update(): void {
    const document = window.activeTextEditor?.document;
    const text =
      document?.languageId === 'markdown' ? statusText(this.#gauges.stateOf(document.uri)) : undefined;
    // Most keys change no figure; setting the same text again would still repaint the status bar.
    const wanted = JSON.stringify(text);
    if (wanted === this.#shown) return;
    this.#shown = wanted;
    if (text === undefined) this.#item.hide();
    else this.#show(text);
  }

  #show({ text, label, tooltip, restarts }: StatusText): void {
    this.#item.text = text;
    this.#item.accessibilityInformation = { label };
    this.#item.tooltip = tooltipMarkdown(tooltip);
    this.#item.command = restarts ? 'battledore.restartServer' : 'battledore.showGauge';
    this.#item.show();
  }
}

function tooltipMarkdown({ title, rows, lines }: StatusTooltip): MarkdownString {
  const markdown = new MarkdownString();
  markdown.appendText(title);
  if (rows.length > 0) {
    markdown.appendMarkdown('\n\n| | Words | Share |\n|---|--:|--:|\n');
    for (const { label, count, share } of rows)
      markdown.appendMarkdown(`| ${label} | ${count} | ${share} |\n`);
  }
  for (const line of lines) {
    markdown.appendMarkdown('\n\n');
    markdown.appendText(line);
  }
  return markdown;
}
