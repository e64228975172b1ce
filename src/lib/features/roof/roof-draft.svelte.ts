import type { FieldTrouble } from './roof-reading.ts';

/**
 * A form being filled in beside what is stored: knows whether it was changed, and which of its
 * troubles to tell now. A field is not blamed while it is being typed in, nor an empty one before
 * somebody asked to save.
 */
export class FormDraft<Form extends object> {
  form = $state() as Form;
  #base = $state.raw() as Form;
  /** The field being typed in and what was told when typing began. */
  #typing = $state.raw<{ readonly field: string; readonly told: readonly string[] }>();
  #isAsked = $state(false);

  readonly isChanged = $derived(JSON.stringify(this.form) !== JSON.stringify(this.#base));

  constructor(base: Form, form: Form = base) {
    this.#base = base;
    this.form = structuredClone(form);
    this.#isAsked = false;
  }

  /** Takes over what is stored now, unless the form holds changes of its own. */
  follow(base: Form): void {
    if (JSON.stringify(base) === JSON.stringify(this.#base)) return;
    if (!this.isChanged) this.form = structuredClone(base);
    this.#base = base;
  }

  /** The form was stored: it now reads as what is stored, however it was typed. */
  stored(base: Form): void {
    this.rewrite(base, structuredClone(base));
    this.#isAsked = false;
  }

  /** Both the form and what is stored, written anew, as after a change of unit. */
  rewrite(base: Form, form: Form): void {
    this.#base = base;
    this.form = form;
  }

  /** Goes back to what is stored. */
  discard(): void {
    this.form = structuredClone(this.#base);
    this.#isAsked = false;
    this.#typing = undefined;
  }

  /** Somebody types in a field. */
  type(field: string, troubles: readonly FieldTrouble[]): void {
    if (this.#typing?.field === field) return;
    const told = this.told(troubles).map(nameOf);
    this.#typing = { field, told };
  }

  /** The field is left: what is in it may be judged. */
  settle(): void {
    this.#typing = undefined;
  }

  /** Somebody asked to save: empty fields are told too. */
  ask(): void {
    this.#isAsked = true;
    this.#typing = undefined;
  }

  /** The troubles to tell now. */
  told(troubles: readonly FieldTrouble[]): FieldTrouble[] {
    const due = troubles.filter(({ code }) => this.#isAsked || !isUnfinished(code));
    const typing = this.#typing;
    if (!typing) return due;
    return due.filter(
      (trouble) => trouble.field !== typing.field && typing.told.includes(nameOf(trouble))
    );
  }
}

function isUnfinished(code: FieldTrouble['code']): boolean {
  return code === 'empty' || code === 'name-missing';
}

function nameOf({ field, code }: FieldTrouble): string {
  return `${field} ${code}`;
}
