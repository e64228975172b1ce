import type { Slope } from '$lib/engine/roof';
import { frameOf } from '$lib/ui';

/** Scales that a scale rule carries, or an even part of one. */
const SCALES = [5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 500, 1000, 2000] as const;

/** Lettering of a printed drawing, mm on paper: 11 pt. */
const LETTER_ON_PAPER_MM = 3.9;

/** A drawing's printed scale 1 : n and its lettering in the roof's own millimetres. */
export interface PaperScale {
  readonly scale: number;
  readonly letterMm: number;
}

/** Frame of a slope's drawing: room for the course numbers at its sides, half a letter above and below. */
export function letteredFrame(slope: Slope, letterMm: number): ReturnType<typeof frameOf> {
  return frameOf(slope, letterMm * 2.2, letterMm * 0.6);
}

/** The largest usual scale at which a slope fits a place on paper. */
export function scaleForSlope(slope: Slope, widthMm: number, heightMm: number): PaperScale {
  const fits = SCALES.map((scale) => ({ scale, letterMm: LETTER_ON_PAPER_MM * scale })).find(
    ({ scale, letterMm }) => {
      const frame = letteredFrame(slope, letterMm);
      return frame.width / scale <= widthMm && frame.height / scale <= heightMm;
    }
  );
  const smallest = SCALES[SCALES.length - 1];
  return fits ?? { scale: smallest, letterMm: LETTER_ON_PAPER_MM * smallest };
}

/** The largest usual scale at which something of a size fits a place on paper. */
export function scaleForSize(
  size: { readonly widthMm: number; readonly heightMm: number },
  widthMm: number,
  heightMm: number
): number {
  return (
    SCALES.find((scale) => size.widthMm / scale <= widthMm && size.heightMm / scale <= heightMm) ??
    SCALES[SCALES.length - 1]
  );
}
