import type { NewEvent } from '$lib/journal';
import type { JobState } from '$lib/app';

/** Slates of a pile that went on to each of the piles in use, as typed. */
export type SortedAgain = Readonly<Record<number, string>>;

/** Why what was typed of a pile sorted again was not taken. */
export type AgainProblem = 'nothing' | 'not-whole' | 'too-many';

/** What becomes of the piles that stand beside the grades: put on another, sorted again, used up. */
export class BesidePiles {
  readonly #job: () => JobState;
  isBusy = $state(false);
  /** Whether the last act was not saved. */
  isUnsaved = $state(false);
  /** Events of the last act, which an undo takes back together. */
  #last = $state.raw<readonly string[]>([]);

  constructor(job: () => JobState) {
    this.#job = job;
  }

  readonly canUndo = $derived(this.#last.length > 0);

  /** A whole pile is put on another. */
  merge(fromPile: number, toPile: number, slates: number): Promise<void> {
    const body = { fromPile, toPile, gradesId: this.#gradesId, slates, why: 'merged' } as const;
    return this.#act([{ type: 'slatesMoved', body }]);
  }

  /**
   * A pile is sorted again: so many slates of it went on to each pile. What was typed is refused as a
   * whole, by its reason, where it cannot be; nothing is stored then.
   *
   * @param slates that lie on the pile
   */
  async sortAgain(
    fromPile: number,
    slates: number,
    typed: SortedAgain
  ): Promise<AgainProblem | undefined> {
    const counts = Object.entries(typed)
      .map(([pile, text]) => ({ pile: Number(pile), text: text.trim() }))
      .filter(({ text }) => text !== '' && text !== '0');
    if (counts.length === 0) return 'nothing';
    if (!counts.every(({ text }) => /^\d{1,7}$/.test(text))) return 'not-whole';
    const all = counts.reduce((sum, { text }) => sum + Number(text), 0);
    if (all > slates) return 'too-many';
    await this.#act(
      counts.map(({ pile: toPile, text }): NewEvent => ({
        type: 'slatesMoved',
        body: {
          ...{ fromPile, toPile, gradesId: this.#gradesId, slates: Number(text) },
          why: 'sortedAgain'
        }
      }))
    );
    return undefined;
  }

  /** Nothing of a pile is left. */
  useUp(pile: number, slates: number): Promise<void> {
    const body = { pile, gradesId: this.#gradesId, slates, reason: 'ranOut' } as const;
    return this.#act([{ type: 'slatesLost', body }]);
  }

  /** Takes the last act back. */
  async undo(): Promise<void> {
    const acts = this.#last.map((voids): NewEvent => ({ type: 'entryVoided', body: { voids } }));
    await this.#act(acts);
    if (!this.isUnsaved) this.#last = [];
  }

  get #gradesId(): string | null {
    return this.#job().grades?.gradesId ?? null;
  }

  async #act(acts: NewEvent[]): Promise<void> {
    if (this.isBusy || acts.length === 0) return;
    this.isBusy = true;
    const events = await this.#job().act(acts);
    this.isBusy = false;
    this.isUnsaved = !events;
    if (events) this.#last = events.map(({ id }) => id);
  }
}
