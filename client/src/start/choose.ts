import { l10n, QuickInputButtons, type QuickPickItem, window } from 'vscode';

/** One question of several. */
export interface Question {
  readonly title: string;
  readonly placeholder: string;
  /** Number of this question and of all, from 1. */
  readonly step: number;
  readonly totalSteps: number;
  readonly items: readonly QuickPickItem[];
  /** The item to begin on. */
  readonly active?: QuickPickItem;
  readonly canGoBack: boolean;
}

/** Asks a question; `'back'` when the writer wants to change the answer before, undefined when she gives up. */
export function choose(question: Question): Promise<QuickPickItem | 'back' | undefined> {
  return new Promise((resolve) => {
    const picker = window.createQuickPick();
    picker.title = question.title;
    picker.placeholder = question.placeholder;
    picker.step = question.step;
    picker.totalSteps = question.totalSteps;
    picker.items = question.items;
    picker.ignoreFocusOut = true;
    picker.matchOnDetail = true;
    if (question.active !== undefined) picker.activeItems = [question.active];
    if (question.canGoBack) picker.buttons = [QuickInputButtons.Back];
    let answer: QuickPickItem | 'back' | undefined;
    picker.onDidAccept(() => {
      answer = picker.activeItems[0];
      if (answer !== undefined) picker.hide();
    });
    picker.onDidTriggerButton(() => {
      answer = 'back';
      picker.hide();
    });
    picker.onDidHide(() => {
      picker.dispose();
      resolve(answer);
    });
    picker.show();
  });
}

/** Asks questions one after another, with a way back; the answers in their order, undefined when the writer gives up. */
export async function chooseAll<Value>(
  title: string,
  questions: readonly {
    readonly question: string;
    readonly answers: readonly { readonly value: Value; readonly label: string; readonly because: string }[];
  }[],
): Promise<readonly Value[] | undefined> {
  const chosen: number[] = [];
  for (let at = 0; at < questions.length; ) {
    const asked = questions[at];
    if (asked === undefined) return undefined;
    const items = asked.answers.map(({ label, because }) => ({
      label: l10n.t(label),
      detail: l10n.t(because),
    }));
    const active = items[chosen[at] ?? 0];
    const answer = await choose({
      title,
      placeholder: l10n.t(asked.question),
      step: at + 1,
      totalSteps: questions.length,
      items,
      ...(active === undefined ? {} : { active }),
      canGoBack: at > 0,
    });
    if (answer === undefined) return undefined;
    if (answer === 'back') {
      at -= 1;
      continue;
    }
    chosen[at] = items.findIndex(({ label }) => label === answer.label);
    at += 1;
  }
  return questions.flatMap(({ answers }, at) => answers[chosen[at] ?? 0]?.value ?? []);
}
