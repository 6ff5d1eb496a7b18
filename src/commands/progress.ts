/** Says how far a run is: one line that is written over on a terminal, plain lines elsewhere, nothing when quiet. */
export class Progress {
  readonly #quiet: boolean;
  readonly #terminal: boolean;
  #open = false;

  constructor(quiet: boolean) {
    this.#quiet = quiet;
    this.#terminal = process.stderr.isTTY === true;
  }

  /** @example progress.stage('printing', 2, 5, 'orchard-cart/rev-b') // "printing 2 of 5: orchard-cart/rev-b" */
  stage(doing: string, done?: number, of?: number, name?: string): void {
    if (this.#quiet) return;
    const text = [doing, done === undefined ? '' : ` ${done} of ${of}`, name ? `: ${name}` : ''].join('');
    if (!this.#terminal) {
      process.stderr.write(`${text}\n`);
      return;
    }
    const width = process.stderr.columns ?? 80;
    process.stderr.write(`\r\u001b[2K${text.slice(0, width - 1)}`);
    this.#open = true;
  }

  /** Ends the line that is written over, so that what follows stands on its own. */
  end(): void {
    if (this.#open) process.stderr.write('\r\u001b[2K');
    this.#open = false;
  }
}
