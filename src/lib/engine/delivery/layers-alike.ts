import fCdf from '@stdlib/stats-base-dists-f-cdf';

/** A slate of the sample that was gauged, and where it lay. */
export interface SlateOfLayer {
  readonly palletId: string;
  readonly layer: number;
  readonly thicknessMm: number;
}

/** How alike slates of one layer are, of those gauged. */
export interface LayersAlike {
  /** Share of the variance within pallets that lies between layers (intraclass correlation), 0 to 1. */
  readonly share: number;
  /** Slates drawn one by one that tell as much of the mean as these do. */
  readonly worth: number;
  readonly slates: number;
  /** Chance of layers that differ so much where they are all alike. */
  readonly p: number;
}

/**
 * Whether slates that lay in one layer are more alike than slates of different layers of their pallet:
 * a sample that takes several of a layer then tells less than as many drawn one by one.
 *
 * @param slates in any order, mm
 * @returns undefined where no layer gave two slates, or no pallet two layers, or all readings are equal
 *
 * Definition: analysis of variance of layers nested within pallets; intraclass correlation
 * (MSB − MSW) ÷ (MSB + (n₀ − 1) MSW), at least 0; design effect 1 + (k − 1)ρ with k = Σn² ÷ Σn; p of the
 * F test. Cost: linear.
 * Source: L. Kish, Survey Sampling, 1965, 5.4; G. W. Snedecor, W. G. Cochran, Statistical Methods, unequal
 * groups: n₀. Both from memory.
 * @example
 * // one pallet, layers (1, 2) and (5, 6): MSB 16, MSW 0.5, ρ = 15.5 / 16.5 = 0.94, worth 4 / 1.94 = 2.1
 */
export function layersAlike(slates: readonly SlateOfLayer[]): LayersAlike | undefined {
  const pallets = grouped(slates, ({ palletId }) => palletId).map((own) =>
    grouped(own, ({ layer }) => layer).map((group) => group.map(({ thicknessMm }) => thicknessMm))
  );
  let [between, within, layerDf, slateDf, squares, shared] = [0, 0, 0, 0, 0, 0];
  for (const layers of pallets) {
    const all = layers.flat();
    const mean = meanOf(all);
    layerDf += layers.length - 1;
    slateDf += all.length - layers.length;
    for (const layer of layers) {
      const own = meanOf(layer);
      between += layer.length * (own - mean) ** 2;
      for (const mm of layer) within += (mm - own) ** 2;
      squares += layer.length ** 2;
      shared += layer.length ** 2 / all.length;
    }
  }
  if (layerDf === 0 || slateDf === 0) return undefined;
  const [msb, msw] = [between / layerDf, within / slateDf];
  if (msb === 0 && msw === 0) return undefined;
  const usual = (slates.length - shared) / layerDf;
  const share = Math.max(0, (msb - msw) / (msb + (usual - 1) * msw));
  const effect = 1 + (squares / slates.length - 1) * share;
  const p = msw === 0 ? 0 : 1 - fCdf(msb / msw, layerDf, slateDf);
  return { share, worth: slates.length / effect, slates: slates.length, p };
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => unknown): Item[][] {
  const groups = new Map<unknown, Item[]>();
  for (const item of items) {
    const own = groups.get(keyOf(item));
    if (own) own.push(item);
    else groups.set(keyOf(item), [item]);
  }
  return [...groups.values()];
}

function meanOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
}
