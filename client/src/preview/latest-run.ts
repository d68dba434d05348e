/**
 * Runs a task for the newest state of something that changes often: at most once in a pause, never two at a time, and
 * once more when something changed while it ran. So work never piles up, and the last change is never missed.
 */
export class LatestRun {
  readonly #task: () => Promise<void>;
  readonly #pause: number;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isRunning = false;
  #isStale = false;
  #isDisposed = false;

  /** @param task must not reject. @param pause in milliseconds. */
  constructor(task: () => Promise<void>, pause: number) {
    this.#task = task;
    this.#pause = pause;
  }

  /** Something changed: runs after the pause. */
  ask(): void {
    if (this.#isDisposed) return;
    if (this.#isRunning) this.#isStale = true;
    else this.#timer ??= setTimeout(() => this.#run(), this.#pause);
  }

  /** Runs without a pause. */
  askNow(): void {
    if (this.#isDisposed) return;
    clearTimeout(this.#timer);
    if (this.#isRunning) this.#isStale = true;
    else this.#run();
  }

  /** Nothing is begun any more. */
  dispose(): void {
    this.#isDisposed = true;
    clearTimeout(this.#timer);
  }

  #run(): void {
    this.#timer = undefined;
    this.#isRunning = true;
    this.#isStale = false;
    void this.#task().finally(() => {
      this.#isRunning = false;
      if (this.#isStale) this.ask();
    });
  }
}
