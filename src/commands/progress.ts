/** Where progress is written: standard error, or what a test reads. */
export interface ProgressStream {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
}

/** In a log, steps of one stage that follow each other faster than this are left out. */
const quickest = 2000;

/** Says how far a run is: one line that is written over on a terminal, plain lines elsewhere, nothing when quiet. */
export class Progress {
  readonly #quiet: boolean;
  readonly #stream: ProgressStream;
  readonly #now: () => number;
  #open = false;
  #last: { doing: string; at: number } | undefined;

  constructor(quiet: boolean, stream: ProgressStream = process.stderr, now: () => number = Date.now) {
    this.#quiet = quiet;
    this.#stream = stream;
    this.#now = now;
  }

  /** @example progress.stage('printing', 2, 5, 'orchard-cart/rev-b') // "printing 2 of 5: orchard-cart/rev-b" */
  stage(doing: string, done?: number, of?: number, name?: string): void {
    if (this.#quiet) return;
    const text = [doing, done === undefined ? '' : ` ${done} of ${of}`, name ? `: ${name}` : ''].join('');
    if (this.#stream.isTTY) {
      const width = this.#stream.columns ?? 80;
      this.#stream.write(`\r\u001b[2K${text.slice(0, width - 1)}`);
      this.#open = true;
      return;
    }
    const soon = this.#last?.doing === doing && this.#now() - this.#last.at < quickest;
    if (soon && done !== of) return;
    this.#last = { doing, at: this.#now() };
    this.#stream.write(`${text}\n`);
  }

  /** Ends the line that is written over, so that what follows stands on its own. */
  end(): void {
    if (this.#open) this.#stream.write('\r\u001b[2K');
    this.#open = false;
  }
}
