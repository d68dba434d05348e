import type { WorkshopMessage, WorkshopShow } from '../messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: WorkshopMessage): void };

const editor = acquireVsCodeApi();
let last = 0;

/** Tells the extension something. */
export function post(message: WorkshopMessage): void {
  editor.postMessage(message);
}

/** Asks the server; `show` gets the answer unless a later question has been asked. */
export function ask(wish: Readonly<Record<string, unknown>>, show: (answer: unknown) => void): void {
  const id = ++last;
  shown = { id, show };
  post({ type: 'ask', id, wish });
}

let shown: { readonly id: number; readonly show: (answer: unknown) => void } | undefined;

/** Listens to the extension; `changed` is called when the text is another or has changed. */
export function listen(changed: (name: string) => void): void {
  window.addEventListener('message', ({ data }: MessageEvent<WorkshopShow>) => {
    if (data?.type === 'text') changed(data.name);
    if (data?.type === 'answer' && data.id === shown?.id) shown.show(data.answer);
  });
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') post({ type: 'editor' });
  });
  post({ type: 'ready' });
}

/** The reason, where an answer is none. */
export function messageOf(answer: unknown): string | undefined {
  return typeof answer === 'object' && answer !== null && 'message' in answer
    ? String(answer.message)
    : undefined;
}
