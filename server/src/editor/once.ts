/** Runs a task when it is first asked for and keeps its result; what fails is tried again. */
export function once<T>(task: () => Promise<T>): () => Promise<T> {
  let running: Promise<T> | undefined;
  return () => {
    running ??= task().catch((fault: unknown) => {
      running = undefined;
      throw fault;
    });
    return running;
  };
}
