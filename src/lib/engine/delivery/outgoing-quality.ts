import { EngineError } from '../errors.ts';
import type { AttributesPlan } from './attributes-plan.ts';
import { acceptance } from './operating-characteristic.ts';

function requireRoom(plan: AttributesPlan, lotSize: number): void {
  if (!(lotSize >= plan.sampleSize))
    throw new EngineError(
      'out-of-range',
      `lot of ${lotSize} is smaller than the sample of ${plan.sampleSize}`
    );
}

/**
 * Share of slates outside that reaches the roof on average, when a refused delivery is gone through
 * slate by slate and every slate found outside, there or in the sample, is replaced.
 *
 * @param lotSize at least the sample
 * @param share share outside on arrival, 0 to 1
 * @returns `acceptance · share · (lot − sample) / lot`
 * @throws EngineError `out-of-range`
 *
 * Source: definition (rectifying inspection).
 */
export function averageOutgoingShare(plan: AttributesPlan, lotSize: number, share: number): number {
  requireRoom(plan, lotSize);
  return (acceptance(plan, share) * share * (lotSize - plan.sampleSize)) / lotSize;
}

/**
 * The worst that can reach the roof on average under the same rule, whatever arrives.
 *
 * @returns the greatest average outgoing share, and the arriving share at which it happens
 *
 * The curve has one summit; it is found by golden section, the height to about 1e-15, the place
 * to about 1e-8 (a summit is flat).
 * @example averageOutgoingLimit({ sampleSize: 52, acceptAtMost: 3 }, 10000) // 0.0371901 at 0.0559
 */
export function averageOutgoingLimit(
  plan: AttributesPlan,
  lotSize: number
): { readonly outgoingShare: number; readonly arrivingShare: number } {
  const golden = (Math.sqrt(5) - 1) / 2;
  const height = (share: number): number => averageOutgoingShare(plan, lotSize, share);
  let low = 0;
  let high = 1;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let leftHeight = height(left);
  let rightHeight = height(right);
  while (high - low > 1e-9) {
    if (leftHeight < rightHeight) {
      low = left;
      left = right;
      leftHeight = rightHeight;
      right = low + golden * (high - low);
      rightHeight = height(right);
    } else {
      high = right;
      right = left;
      rightHeight = leftHeight;
      left = high - golden * (high - low);
      leftHeight = height(left);
    }
  }
  const arrivingShare = (low + high) / 2;
  return { outgoingShare: height(arrivingShare), arrivingShare };
}

/**
 * Slates looked at on average per delivery under the same rule: the sample, and the rest of every
 * refused delivery.
 *
 * @example averageInspected({ sampleSize: 52, acceptAtMost: 3 }, 10000, 0.01) // 70.4
 */
export function averageInspected(plan: AttributesPlan, lotSize: number, share: number): number {
  requireRoom(plan, lotSize);
  return plan.sampleSize + (1 - acceptance(plan, share)) * (lotSize - plan.sampleSize);
}
