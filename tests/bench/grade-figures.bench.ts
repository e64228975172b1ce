/**
 * Times the figures that follow a dragged boundary handle: 8 piles, about 560 bins, 600 courses,
 * sharp and misgraded. A frame at 60 a second lasts 16.7 ms; a phone may be six times slower than
 * the machine this runs on, so the last column is six times the median against that frame.
 */
import { createRandom, randomNormal } from '$lib/engine';
import { equalShares, gradeFigures } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { binsFromPairs } from '$lib/engine/thickness';

const ROUNDS = 400;
const FRAME_MS = 1000 / 60;
const random = createRandom(11);
const bins = binsFromPairs(
  Array.from({ length: 20_000 }, () => {
    const hundredths = Math.round(620 + 95 * randomNormal(random));
    return [Math.min(950, Math.max(350, hundredths)), 1] as const;
  })
);
const courses = Array.from({ length: 600 }, (_course, index) => {
  const slates = 70 - Math.floor(index / 15);
  return { slates, joints: slates - 1 };
});
const shares = equalShares(bins, 8);
if (!shares.ok) throw new Error(shares.reason);

let sink = 0;
for (const misgraded of [false, true]) {
  const figuresAt = gradeFigures({
    bins,
    stockSlates: 32_000,
    courses,
    kickAllowanceMm: 1.5,
    chanceAbove: misgraded ? normalMisgrading(0.25) : undefined
  });
  const times = Array.from({ length: ROUNDS }, (_time, round) => {
    const drag = ((round % 9) - 4) / 100;
    const thresholdsMm = shares.thresholdsMm.map((mm, index) => (index === 3 ? mm + drag : mm));
    const start = performance.now();
    sink += figuresAt(thresholdsMm).roof?.expectedKickers ?? 0;
    return performance.now() - start;
  }).sort((one, other) => one - other);
  const median = times[ROUNDS >> 1];
  console.log(
    `figures of 8 piles, ${bins.hundredths.length} bins, 600 courses, ${misgraded ? 'misgraded' : 'sharp'}: ` +
      `min ${times[0].toFixed(3)} ms, median ${median.toFixed(3)} ms, ` +
      `99 % ${times[Math.floor(0.99 * ROUNDS)].toFixed(3)} ms; ` +
      `six times the median is ${((600 * median) / FRAME_MS).toFixed(0)} % of a frame`
  );
}
if (!Number.isFinite(sink)) throw new Error('a figure is not a number');
