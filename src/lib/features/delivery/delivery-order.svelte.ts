import {
  AGREED_LIMITS,
  type AgreedLimitName,
  type BodyOf,
  CLAIM_ASKS,
  type ClaimAsk,
  type NewEvent
} from '$lib/journal';
import type { JobSettings } from '$lib/job';
import {
  type NumberRead,
  type OrderProblem,
  readAmount,
  readBetween,
  readCount,
  readDay,
  readOrdered,
  readPercent,
  readTolerance
} from './delivery-fields.ts';
import { keepOrder, keptOrder } from './delivery-order-kept.ts';
import type { JobState } from '$lib/app';

type Order = BodyOf<'deliveryDeclared'>;
const TEXTS = [
  'buyer',
  'orderNumber',
  'deliveryNote',
  'batches',
  'product',
  'gauge',
  'measuredBy'
] as const;
const DAYS = ['arrivedOn', 'orderedOn', 'gaugeCheckedOn', 'answerBy'] as const;
type TextField = 'supplier' | 'currency' | 'toleranceWhere' | (typeof TEXTS)[number];
type DayField = (typeof DAYS)[number];
type NumberField = Exclude<keyof Order, TextField | DayField | 'texture' | 'agreed' | 'asks'>;
type SettingField = 'sortingRatePerHour' | 'sortingPacePerHour';

const READERS: Record<NumberField | SettingField, (text: string) => NumberRead> = {
  lengthMm: (text) => readBetween(text, 100, 2000, 'size-range'),
  widthMm: (text) => readBetween(text, 100, 2000, 'size-range'),
  nominalThicknessMm: (text) => readBetween(text, 1.5, 40, 'thickness-range'),
  tolerancePercent: (text) => readTolerance(text),
  slatesOrdered: readOrdered,
  pricePerThousand: (text) => readAmount(text),
  stackOf100Mm: (text) => readAmount(text, 20_000),
  stackTolerancePercent: (text) => readPercent(text, 'over-100'),
  daysToClaim: (text) => readCount(text, 3650),
  replacementDays: (text) => readCount(text, 3650),
  queryDays: (text) => readCount(text, 3650),
  delayCostPerDay: (text) => readAmount(text),
  returnCost: (text) => readAmount(text),
  creditPerThousand: (text) => readAmount(text),
  acceptableKickersPer100: (text) => readPercent(text, 'over-100'),
  sortingRatePerHour: (text) => readAmount(text),
  sortingPacePerHour: (text) => readAmount(text, 100_000)
};
const NUMBERS = Object.keys(READERS) as (NumberField | SettingField)[];
const SETTINGS: readonly SettingField[] = ['sortingRatePerHour', 'sortingPacePerHour'];

/** The order as typed: every field is the text in it. */
export type OrderForm = Record<NumberField | SettingField | TextField | DayField, string> & {
  texture: NonNullable<Order['texture']>;
  asks: Record<ClaimAsk, boolean>;
  agreed: Record<AgreedLimitName, AgreedForm>;
};

/** A limit as it is confirmed: whether the order states it, its figure there, and where. */
export interface AgreedForm {
  isAgreed: boolean;
  limitMm: string;
  where: string;
}

/** A field of the form: of the order itself, or of one of its limits. */
export type OrderField =
  Exclude<keyof OrderForm, 'agreed' | 'asks'> | `agreed.${AgreedLimitName}.${'limitMm' | 'where'}`;

/** Parts of the form that are folded. */
export type OrderFold = 'limits' | 'papers' | 'costs';

const IN_FOLD: Partial<Record<OrderField, OrderFold>> = {
  stackTolerancePercent: 'limits',
  orderedOn: 'papers',
  gaugeCheckedOn: 'papers',
  answerBy: 'papers',
  pricePerThousand: 'costs',
  sortingPacePerHour: 'costs',
  sortingRatePerHour: 'costs',
  acceptableKickersPer100: 'costs',
  creditPerThousand: 'costs',
  queryDays: 'costs',
  replacementDays: 'costs',
  delayCostPerDay: 'costs',
  returnCost: 'costs'
};

/** The folds that hold a field which cannot stand. */
export function foldsToMend(problems: OrderProblems): OrderFold[] {
  const folds = (Object.keys(problems) as OrderField[]).map((field) =>
    field.startsWith('agreed.') ? 'limits' : IN_FOLD[field]
  );
  return folds
    .filter((fold) => fold !== undefined)
    .filter((fold, index, all) => all.indexOf(fold) === index);
}

/** How many papers and facts of measuring the claim can print, and how many are entered. */
export function papersEntered(form: OrderForm): { readonly entered: number; readonly of: number } {
  const fields = [...TEXTS, 'orderedOn', 'gaugeCheckedOn', 'answerBy'] as const;
  return { entered: fields.filter((field) => form[field].trim() !== '').length, of: fields.length };
}

/** Every field that cannot stand, with why. */
export type OrderProblems = Partial<Record<OrderField, OrderProblem>>;

/** The form of an order and of what sorting costs. */
export function orderFormOf(order: Order | undefined, settings: JobSettings): OrderForm {
  const text = (value: number | null | undefined): string => (value ?? '') + '';
  const numbers = NUMBERS.map((field) => {
    const isSetting = (SETTINGS as readonly string[]).includes(field);
    const value = isSetting ? settings[field as SettingField] : order?.[field as NumberField];
    return [field, text(value)];
  });
  return {
    ...(Object.fromEntries(numbers) as Record<NumberField | SettingField, string>),
    supplier: order?.supplier ?? '',
    toleranceWhere: order?.toleranceWhere ?? '',
    agreed: agreedFormOf(order?.agreed ?? []),
    texture: order?.texture ?? 'normal',
    currency: order?.currency ?? '',
    ...textsOf(TEXTS, order),
    ...textsOf(DAYS, order),
    asks: Object.fromEntries(
      CLAIM_ASKS.map((ask) => [ask, order?.asks?.includes(ask) ?? false])
    ) as OrderForm['asks']
  };
}

function textsOf<F extends TextField | DayField>(
  fields: readonly F[],
  order: Order | undefined
): Record<F, string> {
  return Object.fromEntries(fields.map((field) => [field, order?.[field] ?? ''])) as Record<
    F,
    string
  >;
}

function agreedFormOf(agreed: NonNullable<Order['agreed']>): OrderForm['agreed'] {
  const forms = AGREED_LIMITS.map((name): [AgreedLimitName, AgreedForm] => {
    const found = agreed.find(({ limit }) => limit === name);
    const limitMm = `${found?.limitMm ?? ''}`;
    return [name, { isAgreed: found !== undefined, limitMm, where: found?.where ?? '' }];
  });
  return Object.fromEntries(forms) as OrderForm['agreed'];
}

/** The limits ticked; what is wrong with one is put among the problems. */
function readAgreed(form: OrderForm['agreed'], problems: OrderProblems): Order['agreed'] {
  return AGREED_LIMITS.filter((name) => form[name].isAgreed).map((limit) => {
    const where = form[limit].where.trim();
    if (where === '') problems[`agreed.${limit}.where`] = 'where-missing';
    const read = readBetween(form[limit].limitMm, 0.1, 200, 'limit-range');
    if (!read.ok) problems[`agreed.${limit}.limitMm`] = read.problem;
    return { limit, where, ...(read.ok && read.value !== undefined && { limitMm: read.value }) };
  });
}

/** The days typed; a delivery comes after its order, and an answer after the delivery. */
function readDays(form: OrderForm, problems: OrderProblems): Partial<Record<DayField, string>> {
  const days: Partial<Record<DayField, string>> = {};
  for (const field of DAYS) {
    const day = readDay(form[field]);
    if (!day.ok) problems[field] = day.problem;
    else if (day.value) days[field] = day.value;
  }
  const { arrivedOn, orderedOn, answerBy } = days;
  if (arrivedOn && orderedOn && arrivedOn < orderedOn) problems.arrivedOn = 'arrived-before-order';
  if (arrivedOn && answerBy && answerBy < arrivedOn) problems.answerBy = 'answer-before-arrival';
  return days;
}

/** Reads a form: the acts that keep it, or every field that cannot stand. */
export function readOrder(form: OrderForm): { problems: OrderProblems; acts: NewEvent[] } {
  const problems: OrderProblems = {};
  const read: Partial<Record<NumberField | SettingField, number>> = {};
  for (const field of NUMBERS) {
    const result = READERS[field](form[field]);
    if (!result.ok) problems[field] = result.problem;
    else if (result.value !== undefined) read[field] = result.value;
  }
  const days = readDays(form, problems);
  const asks = CLAIM_ASKS.filter((ask) => form.asks[ask]);
  const agreed = readAgreed(form.agreed, problems);
  const toleranceWhere = form.toleranceWhere.trim();
  if (read.stackOf100Mm === 0) delete read.stackOf100Mm;

  const { sortingRatePerHour, sortingPacePerHour, ...order } = read;
  const settings = {
    ...(sortingRatePerHour !== undefined && { sortingRatePerHour }),
    ...(sortingPacePerHour !== undefined && { sortingPacePerHour })
  };
  const body: Order = {
    supplier: form.supplier.trim(),
    texture: form.texture,
    ...(form.currency.trim() && { currency: form.currency.trim() }),
    ...(toleranceWhere && read.tolerancePercent !== undefined && { toleranceWhere }),
    ...(agreed && agreed.length > 0 && { agreed }),
    ...days,
    ...Object.fromEntries(
      TEXTS.map((field) => [field, form[field].trim()]).filter(([, text]) => text !== '')
    ),
    ...(asks.length > 0 && { asks }),
    ...order
  };
  const acts: NewEvent[] = [{ type: 'deliveryDeclared', body }];
  if (Object.keys(settings).length > 0) acts.push({ type: 'jobSettingsSet', body: settings });
  return { problems, acts };
}

/** The order being typed. What is typed stays on this device until it is saved or dropped. */
export class OrderState {
  readonly #job: () => JobState;
  form = $state() as OrderForm;
  /** Whether a save was tried: problems of untouched fields are shown from then on. */
  isSaved = $state(false);
  isBusy = $state(false);
  readonly read = $derived.by(() => readOrder(this.form));
  readonly problems = $derived(this.read.problems);

  constructor(job: () => JobState) {
    this.#job = job;
    const stored = this.#stored();
    this.form = keptOrder(job().jobId, stored) ?? stored;
  }

  /** Whether something is typed that is not saved. */
  readonly isChanged = $derived.by(
    () => JSON.stringify(this.form) !== JSON.stringify(this.#stored())
  );

  /** Keeps what is typed on this device. */
  keep(): void {
    keepOrder(this.#job().jobId, this.isChanged ? $state.snapshot(this.form) : undefined);
  }

  /** Drops what is typed and not saved. */
  discard(): void {
    this.form = this.#stored();
  }

  #stored(): OrderForm {
    return orderFormOf(this.#job().delivery, this.#job().settings);
  }

  /** Keeps the order; false when a field cannot stand or it was not saved. */
  async save(): Promise<boolean> {
    if (this.isBusy || Object.keys(this.problems).length > 0) return false;
    this.isBusy = true;
    try {
      this.isSaved = (await this.#job().act(this.read.acts)) !== undefined;
      if (this.isSaved) this.discard(); // as it reads now that it is stored
      return this.isSaved;
    } finally {
      this.isBusy = false;
    }
  }
}
