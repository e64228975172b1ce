import type { Mate, OpenInvite } from '$lib/sync';
import { preferences } from '../preferences.svelte.ts';
import { journalStore } from '../store.ts';
import {
  type KeptHubKey,
  keepHubKey,
  keepMates,
  recallHubKey,
  recallMates
} from './crew-memory.ts';
import { type HubFault, faultOf } from './hub-fault.ts';
import type { SharingState } from './sharing.svelte.ts';
import { fetchNow } from './fetch-now.ts';

/** An invitation just made. */
export interface OpenInvitation {
  readonly id: string;
  readonly url: string;
}

/** What can be done about a job's crew: start one, invite, remove, change the lock. */
export class CrewState {
  readonly #sharing: () => SharingState;
  mates = $state.raw<readonly Mate[]>([]);
  invitation = $state.raw<OpenInvitation>();
  /** Invitations that may still be used, for whoever may take them back. */
  openInvites = $state.raw<readonly OpenInvite[]>([]);
  hubKey = $state.raw<KeptHubKey>();
  fault = $state<HubFault>();
  isBusy = $state(false);

  constructor(sharing: () => SharingState) {
    this.#sharing = sharing;
  }

  /** Looks who is in the crew, or whether this device may start one. */
  async look(): Promise<void> {
    this.hubKey = await recallHubKey();
    this.mates = await recallMates(this.#sharing().jobId);
    await this.#reach(async () => {
      await this.#lookWhoIsThere();
      await this.#lookAtInvites();
    });
  }

  /** Starts a crew for the job at the hub whose key this device has. */
  async start(name: string): Promise<void> {
    const { jobId } = this.#sharing();
    await this.#reach(async () => {
      const { startCrew } = await import('$lib/sync');
      const kept = this.hubKey;
      if (!kept) return;
      preferences.set({ nickname: name });
      const device = await journalStore().deviceId();
      const { origin, key } = kept;
      const state = await startCrew(fetchNow, { origin, hubKey: key }, jobId, { device, name });
      await this.#sharing().link(state);
      await this.look();
    });
  }

  /** Makes a link that lets one person in. */
  async invite(role: 'member' | 'keeper'): Promise<void> {
    await this.#reach(async () => {
      const link = this.#sharing().state?.link;
      if (!link) return;
      const { inviteMate } = await import('$lib/sync');
      this.invitation = await inviteMate(fetchNow, link, role);
      await this.#lookAtInvites();
    });
  }

  /** Takes an invitation back: it lets nobody in any more. */
  async takeBack(id: string): Promise<void> {
    await this.#reach(async () => {
      await this.#lookAtInvites({ revoke: id });
      if (this.invitation?.id === id) this.invitation = undefined;
    });
  }

  async remove(id: string): Promise<void> {
    await this.#reach(() => this.#lookWhoIsThere({ remove: id }));
  }

  /**
   * Changes the lock: a new space under a new key, to which this device sends all again. Nobody else
   * is in it until he is invited again.
   */
  async changeLock(): Promise<void> {
    this.invitation = undefined;
    await this.start(preferences.values.nickname);
  }

  /** Keeps the key of a hub, read from its link. */
  async keepKey(kept: KeptHubKey): Promise<void> {
    await keepHubKey(kept);
    this.hubKey = kept;
  }

  async #lookWhoIsThere(change?: Record<string, unknown>): Promise<void> {
    const link = this.#sharing().state?.link;
    if (!link) return;
    const { crewOf } = await import('$lib/sync');
    this.mates = await crewOf(fetchNow, link, change);
    await keepMates(link.jobId, this.mates);
  }

  async #lookAtInvites(change?: Record<string, unknown>): Promise<void> {
    const link = this.#sharing().state?.link;
    if (link?.role !== 'keeper') return;
    const { openInvites } = await import('$lib/sync');
    this.openInvites = await openInvites(fetchNow, link, change);
  }

  async #reach(work: () => Promise<void>): Promise<void> {
    this.isBusy = true;
    this.fault = undefined;
    try {
      await work();
    } catch (error) {
      this.fault = faultOf(error);
    } finally {
      this.isBusy = false;
    }
  }
}
