import {
  type AnyPart,
  type JobView,
  type PartKey,
  type PartOf,
  emptyPart,
  isEmptyPart
} from './view.ts';

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

  /** The parts that were changed; one that came to nothing is among them, empty. */
  get touched(): ReadonlyMap<string, AnyPart> {
    return this.#touched;
  }

  /**
   * The new view; it shares every untouched part with the base. Parts that came to nothing are
   * dropped, so that the view does not tell in which order an act and its undo came.
   */
  finish(): JobView {
    const view = new Map([...this.#base, ...this.#touched]);
    for (const [key, part] of this.#touched) if (isEmptyPart(part)) view.delete(key);
    return view;
  }
}
