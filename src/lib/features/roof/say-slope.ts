import { type SlateSpec, type SlopeLayout, markingSheet } from '$lib/engine/roof';
import type { Catalogue, NumberWords } from '$lib/text';
import type { LengthWriter } from '$lib/ui';

/** A pitch as it is said: whole degrees where it is whole. */
export function sayDegrees(degrees: number, numbers: NumberWords): string {
  return `${numbers.decimal(degrees, Number.isInteger(degrees) ? 0 : 1)}°`;
}

/** What a slope is set out by, in one line: slate, gauge, headlap, courses, size and pitch. */
export function saySlope(
  laid: SlopeLayout,
  spec: SlateSpec,
  length: LengthWriter,
  text: Catalogue['sheet'],
  numbers: NumberWords
): string {
  const { slope } = laid;
  const { slate, gaugeMm, headlapMm, fullCourses } = markingSheet(laid, spec);
  const { randomWidths } = spec;
  const said = [
    randomWidths
      ? text.randomSlate(
          length(spec.lengthMm),
          length(randomWidths.fromMm),
          length(randomWidths.toMm)
        )
      : text.slate(length(slate.lengthMm), length(slate.widthMm)),
    text.gauge(length(gaugeMm, 1)),
    text.headlap(length(headlapMm)),
    text.courses(fullCourses),
    text.size(length(slope.rafterLengthMm), length(slope.eaveWidthMm)),
    text.pitch(sayDegrees(slope.pitchDegrees, numbers))
  ];
  return `${said.join(', ')}.`;
}
