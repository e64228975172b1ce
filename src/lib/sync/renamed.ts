import type { EventStamp, StoredEvent } from '$lib/journal';
import type { DeviceNumbers } from '$lib/storage';
import type { Renamed, SyncJournal } from './crew-state.ts';

type Side = 'here' | 'hub';

/** The journal under the numbers that the hub has, both ways; the acts and their ids stay as they are. */
export function asAtHub(journal: SyncJournal, renamed: readonly Renamed[]): SyncJournal {
  if (renamed.length === 0) return journal;
  const toHub = (event: StoredEvent): StoredEvent => restamp(event, renamed, 'here', 'hub');
  return {
    numbers: async (jobId) => numbersAtHub(await journal.numbers(jobId), renamed),
    newest: async (jobId, limit) => (await journal.newest(jobId, limit)).map(toHub),
    async *events(jobId) {
      for await (const batch of journal.events(jobId)) yield batch.map(toHub);
    },
    merge: (events, photos) => journal.merge(asHere([...events], renamed), photos),
    photo: (photoId) => journal.photo(photoId)
  };
}

/** Events of the hub under the numbers that they have here. */
export function asHere(events: readonly StoredEvent[], renamed: readonly Renamed[]): StoredEvent[] {
  return events.map((event) => restamp(event, renamed, 'hub', 'here'));
}

/** Under which number an event stands on the other side. */
function restamp(
  event: StoredEvent,
  renamed: readonly Renamed[],
  from: Side,
  to: Side
): StoredEvent {
  const place = placeOn(event, renamed, from, to);
  return place ? { ...event, ...place } : event;
}

function placeOn(
  { deviceId, deviceSeq }: EventStamp,
  renamed: readonly Renamed[],
  from: Side,
  to: Side
): EventStamp | undefined {
  const [run] = renamed
    .filter((one) => one[from].device === deviceId && one[from].after < deviceSeq)
    .sort((one, other) => other[from].after - one[from].after);
  return (
    run && {
      deviceId: run[to].device,
      deviceSeq: deviceSeq - run[from].after + run[to].after
    }
  );
}

export function numbersAtHub(numbers: DeviceNumbers, renamed: readonly Renamed[]): DeviceNumbers {
  const atHub: DeviceNumbers = {};
  const note = (device: string, last: number): void => {
    if (last > 0) atHub[device] = Math.max(atHub[device] ?? 0, last);
  };
  for (const [device, last] of Object.entries(numbers)) {
    const cuts = renamed
      .filter(({ here }) => here.device === device && here.after < last)
      .map(({ here }) => here.after)
      .sort((one, other) => one - other);
    // The last number of each stretch between two cuts.
    for (const end of [...cuts, last]) {
      const stamp = { deviceId: device, deviceSeq: end };
      const place = placeOn(stamp, renamed, 'here', 'hub') ?? stamp;
      note(place.deviceId, place.deviceSeq);
    }
  }
  return atHub;
}
