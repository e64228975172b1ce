import type { SetsProblem } from '$lib/engine/sizes';
import type { SlateSizeBody } from '$lib/journal';
import type { Catalogue } from '$lib/text';
import type { LengthWriter } from '$lib/ui';

/** A size in a few words: "500 × 250 mm", "400 mm, random 150 to 300 mm". */
export function saySize(
  size: SlateSizeBody,
  text: Catalogue['sizes'],
  length: LengthWriter
): string {
  const { lengthMm, widthMm, widthFromMm, widthToMm } = size;
  return widthMm === undefined
    ? text.random(length(lengthMm), length(widthFromMm ?? 0), length(widthToMm ?? 0))
    : text.one(length(lengthMm), length(widthMm));
}

/** What keeps sizes from one roof, as a sentence with what to do. */
export function saySizesProblem(
  problem: SetsProblem,
  text: Catalogue['sizes'],
  length: LengthWriter
): string {
  const says = text.problems;
  switch (problem.code) {
    case 'no-sets':
      return says['no-sets']();
    case 'not-a-length':
      return says['not-a-length']();
    case 'too-many':
      return says['too-many'](String(problem.most));
    case 'rising':
      return says.rising(length(problem.lengthMm), length(problem.beforeMm));
    case 'same-length':
      return says['same-length'](length(problem.lengthMm));
    case 'below-twice-lap':
      return says['below-twice-lap'](length(problem.lengthMm), length(problem.leastMm));
    case 'headlap-above-third':
      return says['headlap-above-third'](length(problem.lengthMm), length(problem.mostMm));
    case 'wider-than-long':
      return says['wider-than-long'](length(problem.widthMm), length(problem.lengthMm));
    case 'widths-reversed':
      return says['widths-reversed'](length(problem.fromMm), length(problem.toMm));
    case 'step-too-large':
      return says['step-too-large'](length(problem.lengthMm), length(problem.beforeMm));
  }
}
