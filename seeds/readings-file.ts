import { csvLine } from '$lib/storage';
import { inventedDelivery } from '../src/lib/example/delivery.ts';

/** The invented delivery as a file of readings: what `seeds/readings.csv` holds. */
export function readingsFile(): string {
  const lines = inventedDelivery().map(({ pallet, thicknessHundredths }) =>
    csvLine([pallet, { value: thicknessHundredths / 100, decimals: 2 }])
  );
  return csvLine(['pallet', 'thickness_mm']) + lines.join('');
}
