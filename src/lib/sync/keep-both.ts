import { type StoredEvent, branchDeviceId } from '$lib/journal';
import type { JournalStore } from '$lib/storage';
import type { CrewRecord, Renamed } from './crew-state.ts';
import { moveIn } from './crew.ts';
import { type Fetch, HubClient } from './hub-client.ts';
import { deriveKeys } from './keys.ts';
import { openParcel } from './parcel.ts';
import { asAtHub, asHere } from './renamed.ts';

interface Parts {
  readonly journal: JournalStore;
  readonly fetch: Fetch;
  /** What the others call whoever works here. */
  readonly name: string;
}

/**
 * Keeps both histories of a device that was copied or put back: the hub's comes in here under an id
 * of its own, and what is only here goes to the hub under another. The acts keep their ids, so none
 * is counted twice; every device gives a branch the same id ({@link branchDeviceId}).
 *
 * @param device that is held, since the hub has other events under its numbers
 * @returns undefined where the hub's run does not open, or does not fork from the one here
 * @throws HubSilent, HubRefused
 */
export async function keepBothRuns(
  state: CrewRecord,
  device: string,
  { journal, fetch, name }: Parts
): Promise<CrewRecord | undefined> {
  const { link, renamed = [] } = state;
  const theirs = await runAtHub(state, device, fetch);
  const own: StoredEvent[] = [];
  for await (const batch of asAtHub(journal, renamed).events(link.jobId))
    own.push(...batch.filter(({ deviceId }) => deviceId === device));
  own.sort((one, other) => one.deviceSeq - other.deviceSeq);
  let common = 0;
  while (common < own.length && own[common].id === theirs?.at(common)?.id) common++;
  const [mine, their] = [own.at(common), theirs?.at(common)];
  if (!theirs || !mine || !their) return undefined;
  let theirPlace = await placeHere(journal, link.jobId, their.id);
  if (!theirPlace) {
    // The last that both have comes too, so that the fork is seen.
    const fork = asHere(theirs.slice(Math.max(0, common - 1)), renamed);
    await journal.merge(fork, [], 'made-here', 'keep-both');
    theirPlace = await placeHere(journal, link.jobId, their.id);
  }
  const minePlace = await placeHere(journal, link.jobId, mine.id);
  if (!theirPlace || !minePlace) return undefined;
  const branch = branchDeviceId(mine.id);
  const runs: Renamed[] = [
    { here: before(theirPlace), hub: { device, after: common } },
    { here: before(minePlace), hub: { device: branch, after: 0 } }
  ];
  const kept = renamed.filter(({ here }) => !runs.some((run) => isSamePlace(run.here, here)));
  // Where hub and journal agree is found out anew for the runs that changed.
  const tips = Object.fromEntries(
    Object.entries(state.tips).filter(([one]) => one !== device && one !== branch)
  );
  const next = { ...state, tips, held: {}, renamed: [...kept, ...runs] };
  // A member may send for a device of his own only; a keeper for any.
  return link.role === 'keeper' ? next : moveIn(fetch, next, { device: branch, name });
}

function before({ deviceId, deviceSeq }: StoredEvent): Renamed['here'] {
  return { device: deviceId, after: deviceSeq - 1 };
}

/** The whole run of a device at the hub, in order of number; undefined where it does not open. */
async function runAtHub(
  { link, tips }: CrewRecord,
  device: string,
  fetch: Fetch
): Promise<StoredEvent[] | undefined> {
  const keys = await deriveKeys(link.jobKey, link.space);
  const hub = new HubClient(fetch, link);
  const events: StoredEvent[] = [];
  const have = Object.fromEntries(Object.keys(tips).map((name) => [name, MAX]));
  delete have[device];
  for (;;) {
    const { heads, parcels } = await hub.pull(have);
    const wanted = parcels.filter((parcel) => parcel.device === device);
    for (const sealed of wanted) {
      const opened = await openParcel(keys, link.space, link.jobId, sealed);
      if (!opened.ok || sealed.first > events.length + 1) return undefined;
      events.push(...opened.parcel.events.slice(events.length + 1 - sealed.first));
    }
    if (events.length >= (heads[device] ?? 0) || wanted.length === 0) return events;
    have[device] = events.length;
  }
}

const MAX = Number.MAX_SAFE_INTEGER;

async function placeHere(journal: JournalStore, jobId: string, eventId: string) {
  for await (const batch of journal.events(jobId)) {
    const found = batch.find(({ id }) => id === eventId);
    if (found) return found;
  }
  return undefined;
}

function isSamePlace(one: Renamed['here'], other: Renamed['here']): boolean {
  return one.device === other.device && one.after === other.after;
}
