import type { StoredEvent } from '$lib/journal';
import { exampleEvents } from '../../src/lib/example/worked-example.ts';

/** For tests: the events of the worked example, the same every time, ids and times too. */
export function fixedExample(): StoredEvent[] {
  return exampleEvents({
    jobId: '01890000-0000-7000-8000-000000000001',
    deviceId: '01890000-0000-7000-8000-000000000002',
    endsAt: 1_740_000_000_000,
    randomHex: () => '0123456789abcdef'
  });
}
