import { type BodyOf, type Setting, partOf } from '$lib/journal';
import type { JobState } from '$lib/app';

/** Stacks and notes beside the sampled slates. */
export class DeliveryExtras {
  readonly #job: () => JobState;
  stackSlates = $state('100');
  stackTotal = $state('');
  stackPallet = $state('');
  isStackWrong = $state(false);
  note = $state('');
  isNoteMissing = $state(false);

  constructor(job: () => JobState) {
    this.#job = job;
  }

  readonly stacks: readonly Setting<BodyOf<'stackMeasured'>>[] = $derived.by(
    () => partOf(this.#job().view, 'job').stacks
  );
  readonly notes: readonly Setting<BodyOf<'defectNoted'>>[] = $derived.by(
    () => partOf(this.#job().view, 'job').defects
  );

  /** Keeps a measured stack. */
  async addStack(): Promise<void> {
    const slates = /^\d+$/.test(this.stackSlates.trim()) ? Number(this.stackSlates) : 0;
    const totalMm = Number(this.stackTotal.trim().replace(',', '.'));
    const isRight = slates >= 1 && slates <= 1000 && totalMm >= 1 && totalMm <= 20_000;
    this.isStackWrong = !isRight;
    if (!isRight) return;
    const body = { palletId: this.stackPallet || null, slates, totalMm };
    if (await this.#job().act({ type: 'stackMeasured', body })) this.stackTotal = '';
  }

  /** Keeps a note for the supplier. */
  async addNote(): Promise<void> {
    const text = this.note.trim();
    this.isNoteMissing = text === '';
    if (this.isNoteMissing) return;
    const palletId = this.stackPallet || null;
    if (await this.#job().act({ type: 'defectNoted', body: { palletId, text } })) this.note = '';
  }

  async takeBack(eventId: string): Promise<void> {
    await this.#job().undo(eventId);
  }
}
