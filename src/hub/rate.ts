const MINUTE = 60_000;

/** Lets so many through in any minute, for each name; forgets names that are quiet. */
export class Rate {
  readonly #most: number;
  readonly #times = new Map<string, number[]>();
  #sweptAt = 0;

  constructor(most: number) {
    this.#most = most;
  }

  /** Whether one more may pass now; it is counted only if so. */
  take(name: string, at: number): boolean {
    this.#sweep(at);
    const recent = (this.#times.get(name) ?? []).filter((time) => time > at - MINUTE);
    const mayPass = recent.length < this.#most;
    if (mayPass) recent.push(at);
    this.#times.set(name, recent);
    return mayPass;
  }

  #sweep(at: number): void {
    if (at < this.#sweptAt + MINUTE) return;
    this.#sweptAt = at;
    for (const [name, times] of this.#times)
      if (times[times.length - 1] <= at - MINUTE || times.length === 0) this.#times.delete(name);
  }
}
