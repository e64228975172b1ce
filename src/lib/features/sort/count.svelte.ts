import { type PackedThickness, type PackingUnknown, packedThickness } from '$lib/engine/thickness';
import type { NewEvent, SetAsideUse } from '$lib/journal';
import type { JobState } from '$lib/app';
import { countingGround, knownStacks, refusedCounts } from '$lib/job';
import {
  type CellProblem,
  type CellRead,
  type CountedBy,
  readCountByHeight,
  readHeights,
  readSlates
} from './count-reading.ts';

/** More than this on one pile is a slip of the finger. */
const MOST_ON_PILE = 20_000;
/** Most slates in one box of a pallet: each becomes an entry of its own. */
const MOST_OF_PALLET = 2000;
/** Most slates in a stack of known count. */
const MOST_IN_STACK = 1000;
/** In the place of a pile: the column of slates set aside. */
export const ASIDE = 0;

/** Why a field of the count cannot stand. */
export type CountProblem =
  | { readonly reason: CellProblem }
  | { readonly reason: 'above-came'; readonly most: number }
  | { readonly reason: 'above-with-others'; readonly sum: number; readonly most: number }
  | { readonly reason: 'above-pallet'; readonly left: number; readonly label: string };

interface Cell {
  readonly text: string;
  readonly by: CountedBy;
}

/** The piles counted, whole or pallet by pallet, by number or by height, on their way into the journal. */
export class CountState {
  /** Whether whole piles are counted, or what came on them from each pallet. */
  what = $state<'piles' | 'pallets'>('piles');
  /** What is typed into a field that is empty. */
  by = $state<CountedBy>('slates');
  /** Whether the slates from pallets stood there already when the piles were counted last. */
  isInCount = $state(false);
  asideUse = $state<SetAsideUse>('scrap');
  isBusy = $state(false);
  /** Whether it was to be saved with every field empty. */
  isNothing = $state(false);
  /** What was saved last, so that all of it can be taken back. */
  saved = $state.raw<{
    readonly events: readonly string[];
    readonly piles: number;
    readonly slates: number;
  }>();
  #cells = $state<Record<string, Cell>>({});
  #problems = $state.raw<Record<string, CountProblem>>({});
  #sorted = $state.raw<typeof import('$lib/job/sorted')>();
  readonly #job: () => JobState;
  readonly #sorter: () => string;

  constructor(job: () => JobState, sorter: () => string) {
    this.#job = job;
    this.#sorter = sorter;
  }

  readonly ground = $derived.by(() => countingGround(this.#job().view));
  /** The piles that slates are sorted on to. */
  readonly graded = $derived(this.ground.piles.filter(({ isGraded }) => isGraded));
  readonly stacks = $derived.by(() => knownStacks(this.#job().view));
  readonly #packed = $derived.by((): readonly (PackedThickness | PackingUnknown)[] => {
    const piles = this.#sorted?.thicknessOfPiles(this.#job().view) ?? [];
    return this.ground.piles.map(({ pile }) => packedThickness(pile, piles, this.stacks));
  });

  /** Fetches what a height needs beside a stack of known count. */
  async prepare(): Promise<void> {
    this.#sorted ??= await import('$lib/job/sorted').catch(() => undefined);
  }

  textOf(key: string): string {
    return this.#cells[key]?.text ?? '';
  }

  /** What stands, or would stand, in a field. */
  byOf(key: string): CountedBy {
    const cell = this.#cells[key];
    return isWide(key) || pileOf(key) === ASIDE ? 'slates' : cell?.text ? cell.by : this.by;
  }

  set(key: string, text: string): void {
    this.#cells[key] = { text, by: this.byOf(key) };
    this.#problems = Object.fromEntries(
      Object.entries(this.#problems).filter(([of]) => of !== key)
    );
    this.isNothing = false;
  }

  /** A field as it stands. */
  read(key: string): CellRead {
    if (this.byOf(key) === 'slates')
      return readSlates(this.textOf(key), this.what === 'piles' ? MOST_ON_PILE : MOST_OF_PALLET);
    const { lengthUnit } = this.#job().settings;
    return readCountByHeight(this.textOf(key), lengthUnit, this.#packed[pileOf(key) - 1]);
  }

  problemOf(key: string): CountProblem | undefined {
    return this.#problems[key];
  }

  /** Saves everything that is typed, all or none. Resolves to whether it was saved. */
  async save(): Promise<boolean> {
    if (this.isBusy) return false;
    const keys = this.#keys().filter((key) => this.textOf(key).trim() !== '');
    if (keys.some((key) => this.byOf(key) === 'height')) await this.prepare();
    this.isNothing = keys.length === 0;
    this.#problems = this.#problemsIn(keys);
    if (this.isNothing || Object.keys(this.#problems).length > 0) return false;
    const acts = this.what === 'piles' ? this.#pileActs(keys) : this.#palletActs(keys);
    this.isBusy = true;
    const events = await this.#job().act(acts, this.#sorter());
    this.isBusy = false;
    if (!events) return false;
    this.saved = {
      events: events.map(({ id }) => id),
      piles: this.what === 'piles' ? acts.length : 0,
      slates: acts.filter(({ type }) => type !== 'pileCounted').length
    };
    this.#cells = {};
    return true;
  }

  /** Takes everything back that was saved last. */
  async undoAll(): Promise<void> {
    if (this.isBusy || !this.saved) return;
    this.isBusy = true;
    const acts = this.saved.events.map((voids): NewEvent => ({
      type: 'entryVoided',
      body: { voids }
    }));
    const events = await this.#job().act(acts);
    this.isBusy = false;
    if (events) this.saved = undefined;
  }

  /** Keeps a stack of known count; tells the first field that cannot stand, or that it was kept. */
  async addStack(
    pile: number,
    slatesTyped: string,
    heightTyped: string
  ): Promise<'kept' | 'slates' | 'height' | 'height-zero' | 'unsaved'> {
    const slates = readSlates(slatesTyped, MOST_IN_STACK);
    if (slates.kind !== 'counted' || slates.slates < 1) return 'slates';
    const height = readHeights(heightTyped, this.#job().settings.lengthUnit);
    if (!height.ok) return height.problem === 'height-zero' ? 'height-zero' : 'height';
    const totalMm = height.heightsMm.reduce((sum, mm) => sum + mm, 0);
    const gradesId = this.#job().grades?.gradesId ?? null;
    const { number } = this.ground.piles[pile - 1];
    const body = { palletId: null, slates: slates.slates, totalMm, pile: number, gradesId };
    const saved = await this.#job().act({ type: 'stackMeasured', body }, this.#sorter());
    if (!saved) return 'unsaved';
    // What a stack was lacking for may be worked out now.
    const isOfStack = ([, { reason }]: [string, CountProblem]): boolean =>
      reason === 'no-stack' || reason === 'no-thickness';
    const others = Object.entries(this.#problems).filter((problem) => !isOfStack(problem));
    this.#problems = Object.fromEntries(others);
    return 'kept';
  }

  async removeStack(eventId: string): Promise<void> {
    await this.#job().undo(eventId);
  }

  /** Every field that is shown. */
  #keys(): string[] {
    const piles = this.ground.piles.map(({ pile }) => pile);
    if (this.what === 'piles')
      return [...piles.map((pile) => pileKey(pile)), ...piles.map((pile) => wideKey(pile))];
    const graded = this.graded.map(({ pile }) => pile);
    return this.#job().pallets.flatMap(({ palletId }) =>
      [...graded, ASIDE].map((pile) => palletKey(palletId, pile))
    );
  }

  #problemsIn(keys: readonly string[]): Record<string, CountProblem> {
    const problems: Record<string, CountProblem> = {};
    for (const key of keys) {
      const read = this.read(key);
      if (read.kind === 'wrong') problems[key] = { reason: read.problem };
    }
    if (Object.keys(problems).length > 0) return problems;
    if (this.what === 'pallets') return this.#abovePallets(keys);
    const counted = this.ground.piles.map(({ pile }) => this.#fewestOf(pileKey(pile)));
    const refused = refusedCounts(this.ground, counted);
    return refused ? { [pileKey(refused.pile)]: refused } : {};
  }

  /** The fewest slates that a field stands for: the low end of a height. */
  #fewestOf(key: string): number | undefined {
    const read = this.read(key);
    return read.kind === 'counted' ? (read.byHeight?.low ?? read.slates) : undefined;
  }

  #abovePallets(keys: readonly string[]): Record<string, CountProblem> {
    const problems: Record<string, CountProblem> = {};
    for (const { palletId, label, slates, sorted } of this.#job().pallets) {
      const own = keys.filter((key) => placeOf(key) === palletId);
      const typed = own.reduce((sum, key) => sum + (this.#fewestOf(key) ?? 0), 0);
      const left = Math.max(0, slates - sorted);
      const last = own.at(-1);
      if (slates > 0 && typed > left && last)
        problems[last] = { reason: 'above-pallet', left, label };
    }
    return problems;
  }

  #pileActs(keys: readonly string[]): NewEvent[] {
    return this.ground.piles.flatMap(({ pile, standing, sdSlates, count }): NewEvent[] => {
      if (!keys.includes(pileKey(pile)) && !keys.includes(wideKey(pile))) return [];
      const read = this.read(pileKey(pile));
      const wide = this.read(wideKey(pile));
      const byHeight = read.kind === 'counted' ? read.byHeight : undefined;
      const slates = read.kind === 'counted' ? read.slates : standing;
      const sd = read.kind === 'counted' ? byHeight?.sdSlates : sdSlates;
      const body = count(Math.min(slates, this.ground.most ?? slates), {
        ...(byHeight && { heightMm: byHeight.heightMm }),
        ...(sd && { sdSlates: sd }),
        ...(wide.kind === 'counted' && { slateAndAHalves: wide.slates })
      });
      return [{ type: 'pileCounted', body }];
    });
  }

  #palletActs(keys: readonly string[]): NewEvent[] {
    const gradesId = this.#job().grades?.gradesId ?? null;
    const numbers = this.ground.piles.map(({ number }) => number);
    const added = numbers.map(() => 0);
    const acts = keys.flatMap((key): NewEvent[] => {
      const read = this.read(key);
      const [palletId, pile] = [placeOf(key), pileOf(key)];
      const n = read.kind === 'counted' ? read.slates : 0;
      if (pile !== ASIDE) added[pile - 1] += n;
      const act: NewEvent =
        pile === ASIDE
          ? { type: 'slateSetAside', body: { palletId, reason: 'other', use: this.asideUse } }
          : { type: 'slateTapped', body: { palletId, pile: numbers[pile - 1], gradesId } };
      return Array.from({ length: n }, () => act);
    });
    if (!this.isInCount || !this.ground.isCounted) return acts;
    // What the piles were counted at stays: the tally alone learns of the slates.
    const kept = this.ground.piles.flatMap(
      ({ pile, standing, sdSlates, isCounted, count }): NewEvent[] => {
        if (!isCounted || added[pile - 1] === 0) return [];
        const body = count(standing, { ...(sdSlates && { sdSlates }) });
        return [
          {
            type: 'pileCounted',
            body: { ...body, tallied: (body.tallied ?? 0) + added[pile - 1] }
          }
        ];
      }
    );
    return [...acts, ...kept];
  }
}

/** The field of a pile by its place, of its slate-and-a-halves, and of a pile from one pallet. */
export const pileKey = (pile: number): string => `|${pile}`;
export const wideKey = (pile: number): string => `+|${pile}`;
export const palletKey = (palletId: string, pile: number): string => `${palletId}|${pile}`;

const isWide = (key: string): boolean => key.startsWith('+|');
const placeOf = (key: string): string => key.slice(0, key.lastIndexOf('|'));
const pileOf = (key: string): number => Number(key.slice(key.lastIndexOf('|') + 1));
