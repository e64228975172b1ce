/** Puts the focus on the first field of a form that is marked as wrong, if there is one. */
export function focusFirstWrong(form: HTMLElement): void {
  form.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
}
