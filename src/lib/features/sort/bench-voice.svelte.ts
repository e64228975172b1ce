import { Announcer, Feedback, type InputRefusal, type JobState, type Preferences } from '$lib/app';
import { type Prompt, type Told, sayTold } from '$lib/app';
import type { StoredEvent } from '$lib/journal';
import { words } from '$lib/text';
import { type NoPallet, sayRefusal } from './refusal-words.ts';

/**
 * What the bench says: on the screen, by sound and touch, and to whoever hears the screen. What it
 * tells of a slate is saved with it.
 */
export class BenchVoice {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly feedback: Feedback;
  readonly announcer = new Announcer();
  /** What the screen says of the last slate. */
  told = $state.raw<Told>();
  prompt = $state.raw<Prompt>();
  refusal = $state.raw<InputRefusal | NoPallet>();
  #saving = $state.raw<Told['act']>();
  #lastSaved: Promise<StoredEvent[] | undefined> | undefined;

  readonly saveStatus = $derived.by(() => {
    if (!this.told) return 'none';
    if (this.#job().isUnsaved(this.told.act)) return 'not-saved';
    return this.#saving === this.told.act ? 'saving' : 'saved';
  });

  constructor(job: () => JobState, preferences: Preferences) {
    this.#job = job;
    this.#preferences = preferences;
    this.feedback = new Feedback(() => preferences.values);
  }

  /** The save of what was told last. */
  get lastSaved(): Promise<StoredEvent[] | undefined> | undefined {
    return this.#lastSaved;
  }

  /** The last slate told a pile, when it can still be set aside instead. */
  get lastOnPile(): Told | undefined {
    const { told } = this;
    return told?.kind === 'gauged' || told?.kind === 'tapped' ? told : undefined;
  }

  /** Shows what a slate was told and saves it; "saved" is shown once it is committed. */
  async tell(told: Told): Promise<StoredEvent[] | undefined> {
    this.told = told;
    this.refusal = undefined;
    this.prompt = undefined;
    this.#saving = told.act;
    const saved = this.#job().act(told.act, this.#preferences.values.nickname);
    this.#lastSaved = saved;
    const events = await saved;
    if (this.#saving === told.act) this.#saving = undefined;
    if (events) this.announcer.say(sayTold(told, words.text, words.numbers));
    else this.feedback.tellRefused(words.text.common.notSaved);
    return events;
  }

  /** Asks for the next reading of the slate in hand. */
  ask(prompt: Prompt): void {
    const { point, side, again, moved } = words.text.sort.told;
    this.prompt = prompt;
    this.told = undefined;
    this.feedback.tellMeasured();
    if (prompt.kind === 'point') this.announcer.say(point(prompt.done, prompt.wanted));
    else if (prompt.kind === 'side') this.announcer.say(side[prompt.side]);
    else this.announcer.say(prompt.kind === 'again' ? again : moved);
  }

  refuse(refusal: InputRefusal | NoPallet): void {
    const sentence = sayRefusal(refusal, words.text.sort, words.numbers);
    this.refusal = refusal;
    this.announcer.say(sentence);
    this.feedback.tellRefused(sentence);
  }

  close(): void {
    this.announcer.close();
    this.feedback.close();
  }
}
