import { type AnyPart, type JobView, type PartKey, type PartOf, emptyPart } from './view.ts';

/**
 * A view being changed: each part is copied the first time it is touched, so the base view stays as
 * it was, and what was touched is known for storage.
 */
export class ViewDraft {
  readonly #base: JobView;
  readonly #touched = new Map<string, AnyPart>();

  constructor(base: JobView) {
    this.#base = base;
  }

  /** A part to modify. */
  part<K extends PartKey>(key: K): PartOf<K> {
    let part = this.#touched.get(key);
    if (!part) {
      const before = this.#base.get(key);
      part = before ? structuredClone(before) : emptyPart(key);
      this.#touched.set(key, part);
    }
    return part as PartOf<K>;
  }

  /** A part to read only: the touched copy, else the base's, else an empty one. */
  peek<K extends PartKey>(key: K): PartOf<K> {
    return (this.#touched.get(key) ?? this.#base.get(key) ?? emptyPart(key)) as PartOf<K>;
  }

  /** The parts that differ from the base view. */
  get touched(): ReadonlyMap<string, AnyPart> {
    return this.#touched;
  }

  /** The new view; it shares every untouched part with the base. */
  finish(): JobView {
    return new Map([...this.#base, ...this.#touched]);
  }
}
