import type { NewEvent } from '$lib/journal';
import type { JobState } from '$lib/app';

/** Most strokes in one box of the sheet. */
const MOST_STROKES = 2000;

/** The strokes of a paper tally sheet on their way into the journal: many slates in one act. */
export class TallySheetState {
  isBusy = $state(false);
  /** Why nothing was saved; `not-whole` names the boxes that are wrong. */
  problem = $state<'none' | 'nothing' | 'not-whole'>('none');
  /** Events of the last sheet saved, so that all of it can be taken back. */
  saved = $state.raw<readonly string[]>([]);
  #boxes = $state<Record<string, string>>({});
  readonly #job: () => JobState;
  readonly #sorter: () => string;

  /** The first box that is wrong, or undefined. */
  readonly firstWrong: { palletId: string; pile: number } | undefined = $derived.by(() => {
    const key = Object.keys(this.#boxes).find((box) => strokesIn(this.#boxes[box]) === undefined);
    return key === undefined ? undefined : placeOf(key);
  });

  constructor(job: () => JobState, sorter: () => string) {
    this.#job = job;
    this.#sorter = sorter;
  }

  valueOf(palletId: string, pile: number): string {
    return this.#boxes[keyOf(palletId, pile)] ?? '';
  }

  set(palletId: string, pile: number, value: string): void {
    this.#boxes[keyOf(palletId, pile)] = value;
    this.problem = 'none';
  }

  isWrong(palletId: string, pile: number): boolean {
    return this.problem === 'not-whole' && strokesIn(this.valueOf(palletId, pile)) === undefined;
  }

  /** Saves a tap for every stroke, all or none; what was typed stays until it is saved. */
  async save(): Promise<void> {
    if (this.isBusy) return;
    if (this.firstWrong) {
      this.problem = 'not-whole';
      return;
    }
    const acts = this.#acts();
    if (acts.length === 0) {
      this.problem = 'nothing';
      return;
    }
    this.isBusy = true;
    const events = await this.#job().act(acts, this.#sorter());
    this.isBusy = false;
    if (!events) return;
    this.saved = events.map(({ id }) => id);
    this.#boxes = {};
  }

  /** Takes the whole sheet back. */
  async undoAll(): Promise<void> {
    if (this.isBusy || this.saved.length === 0) return;
    this.isBusy = true;
    const acts = this.saved.map((voids): NewEvent => ({ type: 'entryVoided', body: { voids } }));
    const events = await this.#job().act(acts);
    this.isBusy = false;
    if (events) this.saved = [];
  }

  #acts(): NewEvent[] {
    const gradesId = this.#job().grades?.gradesId ?? null;
    return Object.entries(this.#boxes).flatMap(([key, value]) => {
      const body = { ...placeOf(key), gradesId };
      return Array.from({ length: strokesIn(value) ?? 0 }, (): NewEvent => ({
        type: 'slateTapped',
        body
      }));
    });
  }
}

/** Strokes in a box; 0 for an empty one, undefined for anything else but a whole number. */
function strokesIn(value: string): number | undefined {
  const typed = value.trim();
  if (typed === '') return 0;
  return /^\d{1,4}$/.test(typed) && Number(typed) <= MOST_STROKES ? Number(typed) : undefined;
}

function keyOf(palletId: string, pile: number): string {
  return `${palletId}|${pile}`;
}

function placeOf(key: string): { palletId: string; pile: number } {
  const [palletId, pile] = key.split('|');
  return { palletId, pile: Number(pile) };
}
