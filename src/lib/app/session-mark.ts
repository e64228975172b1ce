/** A mark that lasts as long as the browser's session, or the page where the browser keeps none. */
export class SessionMark {
  readonly #key: string;
  #isSetHere = false;

  constructor(key: string) {
    this.#key = key;
  }

  get isSet(): boolean {
    if (this.#isSetHere) return true;
    try {
      return sessionStorage.getItem(this.#key) !== null;
    } catch {
      return false;
    }
  }

  set(): void {
    this.#isSetHere = true;
    try {
      sessionStorage.setItem(this.#key, 'yes');
    } catch {
      // A private window keeps nothing: the mark lasts as long as the page.
    }
  }
}
