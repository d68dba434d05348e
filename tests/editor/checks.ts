/** Runs the checks of the editor tests one after another and counts them. */
export class Checks {
  #passed = 0;
  #failed = 0;
  readonly #onFailure: (name: string) => Promise<void>;

  /** @param onFailure is called after a failed check, to keep a picture of what was seen. */
  constructor(onFailure: (name: string) => Promise<void> = async () => {}) {
    this.#onFailure = onFailure;
  }

  /** How many checks passed. */
  get passed(): number {
    return this.#passed;
  }

  /** How many failed. */
  get failed(): number {
    return this.#failed;
  }

  /**
   * Runs one check and prints its outcome; what it returns is printed behind it. A check that throws has failed; the
   * next ones run all the same.
   */
  async check(name: string, run: () => Promise<string | undefined | undefined>): Promise<void> {
    const start = performance.now();
    try {
      const note = await run();
      this.#passed++;
      const time = `${(performance.now() - start).toFixed(0)} ms`;
      console.log(`  ok      ${name} (${time})${note === undefined ? '' : `: ${note}`}`);
    } catch (error) {
      this.#failed++;
      console.log(`  FAILED  ${name}\n${indented(error instanceof Error ? error.message : String(error))}`);
      await this.#onFailure(name).catch(() => {});
    }
  }

  /** Adds the counts of other checks. */
  add(other: Checks): void {
    this.#passed += other.#passed;
    this.#failed += other.#failed;
  }
}

/** @throws Error that shows both, unless they are the same as JSON. */
export function expectSame(actual: unknown, expected: unknown, what: string): void {
  const [left, right] = [JSON.stringify(actual), JSON.stringify(expected)];
  if (left !== right) throw new Error(`${what}\n  expected ${right}\n  but was  ${left}`);
}

function indented(text: string): string {
  return text.replace(/^/gm, '            ');
}
