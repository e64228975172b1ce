import { ENOUGH_TAPERS, type TaperOfJob } from '$lib/job';
import type { TwistOfJob } from '$lib/job/sorted';
import type { Catalogue, NumberWords } from '$lib/text';

/**
 * What is told of taper and of twist, a line each; no line where nobody looked for twist.
 *
 * @param twist undefined while it is worked out
 * @param kickAllowanceMm the step that is still accepted, mm
 */
export function sayShape(
  taper: TaperOfJob,
  twist: TwistOfJob | undefined,
  kickAllowanceMm: number,
  text: Catalogue['grades']['shape'],
  numbers: NumberWords
): string[] {
  const sd = numbers.mm(taper.sdMm, 2);
  const told = taper.isMeasured
    ? text.taperMeasured(sd, taper.slates)
    : text.taperAssumed(sd, taper.slates, ENOUGH_TAPERS);
  if (!twist || twist.tried + twist.looksTwisted + twist.setAside === 0) return [told];
  const { tried, rocking, share, lookedOver, looksTwisted, setAside } = twist;
  const parts = [
    share &&
      text.twist(
        rocking,
        tried,
        numbers.percent(share.low),
        numbers.percent(share.high),
        numbers.mm(kickAllowanceMm, 1)
      ),
    looksTwisted > 0 && text.looksTwisted(looksTwisted, lookedOver),
    setAside > 0 && text.aside(setAside),
    text.noCure
  ].filter((part) => part !== undefined && part !== false);
  return [told, parts.join(' ')];
}
