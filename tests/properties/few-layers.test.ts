/**
 * A sample list that opens few layers of a pallet is still a chance sample: every slate has the same
 * chance. What it gives up is counted by simulation, against a list drawn from anywhere.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { type SamplePlace, drawSamplingList, withRisks } from '$lib/engine/delivery';
import { report, rounds } from '../support/rounds.ts';

type From = 'anywhere' | 'few-layers';

function placesOf(
  pallets: readonly { id: string; layers: number; perLayer: number; count: number }[],
  size: number,
  random: ReturnType<typeof createRandom>,
  from: From = 'few-layers'
): readonly SamplePlace[] {
  const list = drawSamplingList(pallets, size, random, from);
  if (!list.ok) throw new Error(list.reason);
  return list.places;
}

const layersOf = (places: readonly SamplePlace[]): number =>
  new Set(places.map(({ palletId, layer }) => `${palletId}|${layer}`)).size;

describe('a list that opens few layers', () => {
  it('holds as many places as asked, none twice, all on the pallet, the same for the same seed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 15 }),
        fc.integer({ min: 1, max: 60 }),
        fc.nat(),
        fc.nat(),
        fc.integer(),
        (layers, perLayer, missing, wish, seed) => {
          const most = layers * perLayer;
          const count = most - (missing % most);
          const size = 1 + (wish % count);
          const pallet = [{ id: 'A', layers, perLayer, count }];
          const places = placesOf(pallet, size, createRandom(seed));
          expect(places).toEqual(placesOf(pallet, size, createRandom(seed)));
          expect(new Set(places.map(({ layer, place }) => `${layer}|${place}`)).size).toBe(size);
          for (const { layer, place } of places) {
            const inLayer = layer === 1 ? count % perLayer || perLayer : perLayer;
            expect(place >= 1 && place <= inLayer && layer <= layers).toBe(true);
          }
          // √n groups; each runs on into one layer more at most, and one over the short layer
          const groups = Math.ceil(Math.sqrt(size));
          const each = Math.ceil(Math.ceil(size / groups) / perLayer);
          if (size >= 2 && size <= count / 2)
            expect(layersOf(places)).toBeLessThanOrEqual(groups * (1 + each) + 1);
        }
      ),
      { seed: 1818, numRuns: rounds(300, 3000) }
    );
  });

  it('gives each slate the same chance, those of a short top layer too', () => {
    const runs = rounds(20_000, 200_000);
    const random = createRandom(20);
    const hits = new Array<number>(23).fill(0);
    const pallet = [{ id: 'A', layers: 5, perLayer: 5, count: 23 }];
    for (let run = 0; run < runs; run++)
      for (const { layer, place } of placesOf(pallet, 7, random))
        hits[layer === 1 ? place - 1 : 3 + (layer - 2) * 5 + place - 1]++;
    // Each hit count is binomial(runs, 7/23), whatever the others are: five SDs hold all 23.
    const sd = Math.sqrt(runs * (7 / 23) * (16 / 23));
    for (const count of hits) expect(Math.abs(count - (runs * 7) / 23)).toBeLessThan(5 * sd);
  });

  it('opens about half as many layers, and tells less only where slates of a layer are alike', () => {
    const pallets = ['A', 'B', 'C', 'D', 'E'].map((id) => ({
      ...{ id, layers: 12, perLayer: 40, count: 480 }
    }));
    const runs = rounds(300, 3000);
    const random = createRandom(21);
    const spreadOf = (from: From, alike: number): { layers: number; sd: number } => {
      let [layers, sum, squares] = [0, 0, 0];
      for (let run = 0; run < runs; run++) {
        const places = placesOf(pallets, 100, random, from);
        layers += layersOf(places);
        const ofLayer = new Map<string, number>();
        const mean =
          places.reduce((total, { palletId, layer }) => {
            const key = `${palletId}|${layer}`;
            const own = ofLayer.get(key) ?? randomNormal(random);
            ofLayer.set(key, own);
            return total + Math.sqrt(alike) * own + Math.sqrt(1 - alike) * randomNormal(random);
          }, 0) / 100;
        sum += mean;
        squares += mean * mean;
      }
      return { layers: layers / runs, sd: Math.sqrt(squares / runs - (sum / runs) ** 2) };
    };
    const [any, few] = [spreadOf('anywhere', 0), spreadOf('few-layers', 0)];
    const [anyAlike, fewAlike] = [spreadOf('anywhere', 0.1), spreadOf('few-layers', 0.1)];
    report('few layers', {
      layers: few.layers,
      'layers from anywhere': any.layers,
      'SD of the mean': few.sd,
      'from anywhere': any.sd,
      'SD, a tenth of the variance between layers': fewAlike.sd,
      'from anywhere then': anyAlike.sd
    });
    expect(few.layers).toBeLessThan(0.65 * any.layers);
    // An SD from so many rounds is known to 1/√(2 runs): 4 % of itself, 1.3 % in the full size.
    const off = 4 / Math.sqrt(2 * runs);
    expect(Math.abs(few.sd / any.sd - 1)).toBeLessThan(off);
    // Design effect 1 + (k − 1)ρ (Kish, Survey Sampling, 1965): 4 of a layer, ρ = 0.1: 1.3, its root 1.14;
    // from anywhere each has 19 × 39 / 479 = 1.55 others of its layer: 1.155, its root 1.075.
    expect(Math.abs(fewAlike.sd / 0.1 - 1.14)).toBeLessThan(1.14 * off);
    expect(Math.abs(anyAlike.sd / 0.1 - 1.075)).toBeLessThan(1.075 * off);
  });

  it('keeps the risks told where slates are drawn one by one, and not in few layers where faults lie in layers', () => {
    const pallets = ['A', 'B', 'C', 'D', 'E'].map((id) => ({
      ...{ id, layers: 12, perLayer: 40, count: 480 }
    }));
    const lot = 5 * 480;
    const plan = withRisks(
      {
        ...{ sampleSize: 100, acceptAtMost: 8, acceptableShare: 0.05, poorShare: 0.15 },
        basis: []
      },
      lot
    );
    const runs = rounds(2000, 20_000);
    const random = createRandom(22);
    /** How often a delivery is refused of which whole layers are at fault, or slates here and there. */
    const refused = (from: From, share: number, inLayers: boolean): number => {
      const layersAtFault = Math.round(share * 60);
      let count = 0;
      for (let run = 0; run < runs; run++) {
        const units = inLayers ? 60 : lot;
        const bad = new Set<number>();
        const wanted = inLayers ? layersAtFault : share * lot;
        while (bad.size < wanted) bad.add(Math.floor(random() * units));
        const outside = placesOf(pallets, plan.sampleSize, random, from).filter((place) => {
          const layer = (place.palletId.charCodeAt(0) - 65) * 12 + place.layer - 1;
          return bad.has(inLayers ? layer : layer * 40 + place.place - 1);
        }).length;
        count += Number(outside > plan.acceptAtMost);
      }
      return count / runs;
    };
    const seen = {
      scattered: refused('few-layers', 0.05, false),
      good: refused('anywhere', 0.05, true),
      goodInFew: refused('few-layers', 0.05, true),
      poor: 1 - refused('anywhere', 0.15, true),
      poorInFew: 1 - refused('few-layers', 0.15, true)
    };
    const { sellersRisk, buyersRisk } = plan;
    report('risks of few layers', { sellersRisk, buyersRisk, ...seen });
    // Three standard errors of a share counted in so many rounds.
    const off = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / runs);
    expect(seen.good).toBeLessThan(plan.sellersRisk + off(plan.sellersRisk));
    expect(seen.poor).toBeLessThan(plan.buyersRisk + off(plan.buyersRisk));
    // Faults here and there: groups tell as much.
    expect(Math.abs(seen.scattered - plan.sellersRisk)).toBeLessThan(off(plan.sellersRisk));
    // Faults in layers: groups refuse the good delivery more often, and let the poor one pass far more.
    expect(seen.goodInFew).toBeGreaterThan(plan.sellersRisk + off(plan.sellersRisk));
    expect(seen.poorInFew).toBeGreaterThan(3 * plan.buyersRisk);
  });
});
