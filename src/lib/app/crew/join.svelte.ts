import type { FrameProgress, FrameReader, Invitation, InvitationFault } from '$lib/sync';
import { canShare } from '../is-shared.ts';
import { preferences } from '../preferences.svelte.ts';
import { journalStore } from '../store.ts';
import { keepCrew, keepHubKey, ownHub } from './crew-memory.ts';
import { type HubFault, faultOf } from './hub-fault.ts';
import { fetchNow } from './fetch-now.ts';

type JoinFault =
  | InvitationFault
  | HubFault
  | 'no-job'
  | 'nothing-yet'
  /** The hub of the invitation is not the one beside this app: a browser keeps them apart. */
  | 'other-site'
  | 'insecure';

/** Reading what was sent, scanned or pasted, and joining the job that an invitation opens. */
export class JoinState {
  readonly #base: string;
  /** What the link turned out to be. */
  found = $state<'nothing' | 'invitation' | 'hub-key' | 'job'>('nothing');
  fault = $state<JoinFault>();
  /** A job that came from hand to hand, to be taken in as a file. */
  sent = $state.raw<File>();
  /** How many of a mate's codes were seen. */
  progress = $state.raw<FrameProgress>();
  #frames: FrameReader | undefined;
  isBusy = $state(false);
  #invitation: Invitation | undefined;
  /** The same for every try with one link: an answer that was lost does no harm then. */
  #token = '';

  constructor(base: string) {
    this.#base = base;
  }

  /** Takes what a code says; true once there is nothing more to scan. */
  async scan(text: string): Promise<boolean> {
    const { FrameReader } = await import('$lib/sync');
    this.#frames ??= new FrameReader();
    if (this.#frames.take(text) === 'not-ours') {
      await this.read(text);
      return this.found !== 'nothing';
    }
    this.fault = undefined;
    this.progress = this.#frames.progress;
    const { bytes } = this.#frames;
    if (bytes) this.#take(bytes);
    return bytes !== undefined;
  }

  /** Reads a text. A hub key is kept at once; an invitation waits for a name. */
  async read(text: string): Promise<void> {
    this.fault = undefined;
    const { isMateText, newToken, readHubKey, readInvitation } = await import('$lib/sync');
    if (isMateText(text)) {
      this.#take(text);
      return;
    }
    if (!canShare()) {
      this.fault = /join#/.test(text) ? 'insecure' : 'not-an-invitation';
      return;
    }
    const key = readHubKey(text);
    if (key) {
      await keepHubKey({ origin: ownHub(this.#base), key });
      this.found = 'hub-key';
      return;
    }
    const read = await readInvitation(text);
    if (!read.ok) {
      this.fault = read.fault;
      return;
    }
    if (read.invitation.origin !== ownHub(this.#base)) {
      this.fault = 'other-site';
      return;
    }
    this.#invitation = read.invitation;
    this.#token = newToken();
    this.found = 'invitation';
  }

  #take(sent: string | Uint8Array<ArrayBuffer>): void {
    this.sent = new File([sent], 'sent.txt');
    this.found = 'job';
    this.progress = this.#frames = undefined;
  }

  /**
   * Joins under a name, and brings the job here.
   *
   * @returns the job, or undefined where that failed; `fault` says why
   */
  async join(name: string): Promise<string | undefined> {
    const invitation = this.#invitation;
    if (!invitation) return undefined;
    this.isBusy = true;
    this.fault = undefined;
    try {
      preferences.set({ nickname: name });
      const { Exchange, HubClient, deriveKeys, joinCrew } = await import('$lib/sync');
      const store = journalStore();
      const device = await store.deviceId();
      const state = await joinCrew(fetchNow, invitation, this.#token, { device, name });
      if (!state) {
        this.fault = 'no-job';
        return undefined;
      }
      const { link } = state;
      await keepCrew(state);
      const keys = await deriveKeys(link.jobKey, link.space);
      const hub = new HubClient(fetchNow, link);
      const parts = { journal: store, hub, keys, now: Date.now, save: keepCrew };
      const { outcome } = await new Exchange(state, parts).run();
      if (await store.open(link.jobId)) return link.jobId;
      // The link stands; the job comes with the next try.
      this.fault = outcome === 'shared' ? 'nothing-yet' : 'no-answer';
      return undefined;
    } catch (error) {
      this.fault = faultOf(error);
      return undefined;
    } finally {
      this.isBusy = false;
    }
  }
}
