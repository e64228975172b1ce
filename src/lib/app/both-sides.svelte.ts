import type { Prompt } from './told.ts';

/** Of how many slates of the sample one is measured left and right. */
export const SIDES_EVERY = 5;

/** Whether the slate in hand is measured left and right, and whether it rocks on a flat board. */
export class BothSides {
  isOn = $state(false);
  /** Undefined where it is not tried: then nothing of it is kept. */
  rocks = $state<boolean | undefined>(false);

  /** Points to measure of the slate in hand. */
  wanted(pointsPerSlate: number): number {
    return this.isOn ? Math.max(2, pointsPerSlate) : pointsPerSlate;
  }

  /** What is asked next: by its side where the slate is measured left and right. */
  promptOf(prompt: Prompt): Prompt {
    return this.isOn && prompt.kind === 'point' ? { kind: 'side', side: 'right' } : prompt;
  }

  start(): void {
    this.isOn = true;
    this.rocks = false;
  }

  stop(): void {
    this.isOn = false;
    this.rocks = false;
  }

  /** What goes into the journal with a slate measured left and right. */
  get body(): { rocks?: boolean } {
    return this.isOn && this.rocks !== undefined ? { rocks: this.rocks } : {};
  }
}
