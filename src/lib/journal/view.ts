import type { BodyOf, SlopeBody } from './bodies.ts';
import type { SampleSlate } from './bodies-sorting.ts';
import { canonicalJson } from './canonical.ts';
import type { SetAsideReason } from './faults.ts';
import type { Register } from './register.ts';

/** Raise when the shape or meaning of any part changes: stored views are then rebuilt from events. */
export const VIEW_VERSION = 13;

/** How many slates have each thickness: whole hundredths of a millimetre → slates. */
export type Counts = Record<string, number>;

/** What the job is, as settings with their history. One per job. */
export interface JobPart {
  /** Its name, and those it had before. */
  opened: Register<BodyOf<'jobOpened' | 'jobRenamed'>>;
  settings: Register<BodyOf<'jobSettingsSet'>>;
  spec: Register<BodyOf<'slateSpecSet'>>;
  /** Several sizes of slate; empty in a job of one. */
  sizes: Register<BodyOf<'slateSizesSet'>>;
  setCourses: Register<BodyOf<'setCoursesChosen'>>;
  delivery: Register<BodyOf<'deliveryDeclared'>>;
  grades: Register<BodyOf<'gradesSet'>>;
  /** By slopeId; null once removed. */
  slopes: Record<string, Register<SlopeBody | null>>;
  draws: Register<BodyOf<'sampleDrawn'>>;
  studies: Register<BodyOf<'gaugeStudied'>>;
  defects: Register<BodyOf<'defectNoted'>>;
  photos: Register<BodyOf<'photoAdded'>>;
  verdicts: Register<BodyOf<'verdictSigned'>>;
  stacks: Register<BodyOf<'stackMeasured'>>;
  /** Stacks of known count on sorted piles, which turn a height into slates. */
  packed: Register<BodyOf<'stackMeasured'>>;
  /** Branches of copied phones that were kept. */
  copies: Register<BodyOf<'copyKept'>>;
  /** Whence the job came, where another was damaged. */
  rescues: Register<BodyOf<'jobRescued'>>;
}

export interface PlansPart {
  plans: Register<BodyOf<'planAdopted'>>;
}

/** What has been laid and lost. */
export interface LayingPart {
  /** By `slopeId|course`. */
  laid: Record<string, Register<BodyOf<'courseLaid'>>>;
  /** By `slopeId|course`: how far a course was laid when work on it stopped. */
  partLaid: Record<string, Register<BodyOf<'coursePartLaid'>>>;
  lost: Register<BodyOf<'slatesLost'>>;
  moved: Register<BodyOf<'slatesMoved'>>;
  /**
   * By `gradesId|pile`, of several sizes before grades `sizeId|pile`; counted by hand, overriding the
   * tally up to that moment.
   */
  counted: Record<string, Register<BodyOf<'pileCounted'>>>;
}

/** One pile's share of one pallet, under one set of grades. */
export interface PilePart {
  gauged: Counts;
  /** Taps by sorter (nickname or empty). */
  tapped: Counts;
}

/** Everything counted of one pallet. */
export interface PalletPart {
  declared: Register<BodyOf<'palletAdded'>>;
  /** By `gradesId|pile`; `|0` for slates gauged before there were grades. */
  piles: Record<string, PilePart>;
  /** Gauged slates of the unsorted sample, which are on no pile yet. */
  sampled: Counts;
  /** Taper (thickest less thinnest point) of slates gauged at several points, hundredths. */
  taper: Counts;
  /** Slates tried on a flat board: `rocks` or `flat` → how many. */
  onBoard: Counts;
  /** By `reason|use`. */
  setAside: Counts;
  /** Readings that wait for the sorter's answer, each with its device; counted nowhere else. */
  held: Register<BodyOf<'readingHeld'> & { readonly deviceId: string }>;
}

/**
 * Slates of one pallet sorted in each minute of one hour. Hours stand apart from the pallet, so that
 * an act does not rewrite the hours before it.
 */
export interface HourPart {
  /** Minute since 1970, from the ids of the events → slates. */
  minutes: Counts;
  /** Those of them that were gauged, but put on no pile: before there were grades. */
  unpiled: Counts;
}

/** Spot checks of one sorter's taps: `gradesId|pile|hundredths|palletId` → how often. */
export interface SorterPart {
  checks: Counts;
}

/** One measured slate of the unsorted sample. */
export interface SampledSlate {
  palletId: string;
  points: readonly number[];
  sample: SampleSlate;
  setAside?: SetAsideReason;
  /** Whether it rocks on a flat board; left out: not tried. */
  rocks?: boolean;
}

export interface SamplePart {
  slates: Register<SampledSlate>;
}

export interface VoidsPart {
  /** Event id → ids of the entryVoided that name it, in order. */
  voidedBy: Record<string, string[]>;
  /** Events of types that this release does not know: type → how many. */
  unknown: Counts;
}

/** The parts of which a job has one, by key. */
export interface SingleParts {
  job: JobPart;
  plans: PlansPart;
  laying: LayingPart;
  sample: SamplePart;
  voids: VoidsPart;
}

/** All parts by key; `pallet:ID`, `hour:ID|HOUR` and `sorter:NICKNAME` beside the single ones. */
export type PartKey =
  keyof SingleParts | `pallet:${string}` | `hour:${string}` | `sorter:${string}`;
export type PartOf<K extends PartKey> = K extends keyof SingleParts
  ? SingleParts[K]
  : K extends `pallet:${string}`
    ? PalletPart
    : K extends `hour:${string}`
      ? HourPart
      : SorterPart;
export type AnyPart = SingleParts[keyof SingleParts] | PalletPart | HourPart | SorterPart;

/**
 * A job's view: a fold of its events in parts, each small and stored on its own, so that one act
 * rewrites one or two of them however many readings the job has. Disposable. Never modified: a fold
 * gives a new view that shares untouched parts.
 */
export type JobView = ReadonlyMap<string, AnyPart>;

const EMPTY: { [K in keyof SingleParts]: () => SingleParts[K] } = {
  job: () => ({
    opened: [],
    settings: [],
    spec: [],
    sizes: [],
    setCourses: [],
    delivery: [],
    grades: [],
    slopes: {},
    draws: [],
    studies: [],
    defects: [],
    photos: [],
    verdicts: [],
    stacks: [],
    packed: [],
    copies: [],
    rescues: []
  }),
  plans: () => ({ plans: [] }),
  laying: () => ({ laid: {}, partLaid: {}, lost: [], moved: [], counted: {} }),
  sample: () => ({ slates: [] }),
  voids: () => ({ voidedBy: {}, unknown: {} })
};

/** A part as it is before any event touched it. */
export function emptyPart<K extends PartKey>(key: K): PartOf<K> {
  if (Object.hasOwn(EMPTY, key)) return EMPTY[key as keyof SingleParts]() as PartOf<K>;
  if (key.startsWith('pallet:')) {
    const pallet: PalletPart = {
      declared: [],
      piles: {},
      sampled: {},
      taper: {},
      onBoard: {},
      setAside: {},
      held: []
    };
    return pallet as PartOf<K>;
  }
  if (key.startsWith('hour:')) return { minutes: {}, unpiled: {} } as unknown as PartOf<K>;
  return { checks: {} } as unknown as PartOf<K>;
}

/** Whether nothing is left in a part. */
export function isEmptyPart(part: AnyPart): boolean {
  for (const field of Object.values(part) as object[]) for (const _item in field) return false;
  return true;
}

/**
 * A view as text: the same events in force give the same bytes, on every device and in whatever
 * order they came. To compare views, not to store them.
 */
export function canonicalView(view: JobView): string {
  return canonicalJson(Object.fromEntries(view));
}

/** One part of a view, empty when nothing touched it. Not to be modified. */
export function partOf<K extends PartKey>(view: JobView, key: K): PartOf<K> {
  return (view.get(key) as PartOf<K> | undefined) ?? emptyPart(key);
}

/** Ids of the pallets, in the order in which their first event was folded into the view's keys. */
export function palletIds(view: JobView): string[] {
  return [...view.keys()]
    .filter((key) => key.startsWith('pallet:'))
    .map((key) => key.slice('pallet:'.length))
    .sort();
}

/** Nicknames of the sorters with spot checks. */
export function sorterNames(view: JobView): string[] {
  return [...view.keys()]
    .filter((key) => key.startsWith('sorter:'))
    .map((key) => key.slice('sorter:'.length))
    .sort();
}

const MINUTES_AN_HOUR = 60;

/** The key of the part that holds a minute of a pallet. */
export function hourKey(palletId: string, minute: number): `hour:${string}` {
  return `hour:${palletId}|${Math.floor(minute / MINUTES_AN_HOUR)}`;
}

/**
 * Slates gauged or sorted of a pallet in each minute since 1970. Hours that lie wholly before `fromMinute` are
 * left out. Linear in the minutes of sorting that are not.
 */
export function minutesOfPallet(view: JobView, palletId: string, fromMinute = 0): Counts {
  return minutesIn(view, palletId, fromMinute, 'minutes');
}

/** The same of the slates that were gauged, but put on no pile. */
export function unpiledMinutesOfPallet(view: JobView, palletId: string, fromMinute = 0): Counts {
  return minutesIn(view, palletId, fromMinute, 'unpiled');
}

function minutesIn(
  view: JobView,
  palletId: string,
  fromMinute: number,
  field: keyof HourPart
): Counts {
  const minutes: Counts = {};
  const start = `hour:${palletId}|`;
  const fromHour = Math.floor(fromMinute / MINUTES_AN_HOUR);
  for (const [key, part] of view)
    if (key.startsWith(start) && Number(key.slice(start.length)) >= fromHour)
      Object.assign(minutes, (part as HourPart)[field]);
  return minutes;
}
