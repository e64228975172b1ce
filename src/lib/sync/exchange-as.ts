import { type Joiner, moveIn } from './crew.ts';
import type { CrewRecord } from './crew-state.ts';
import { Exchange, type ExchangeParts } from './exchange.ts';
import { type Fetch, HubClient } from './hub-client.ts';
import { deriveKeys } from './keys.ts';

/**
 * An exchange as the device that this is now. Where it took an id of its own, since it was copied,
 * what it did before goes out first; then it is let in under that id.
 *
 * @returns the exchange, under the old id as long as that fails
 */
export async function exchangeAs(
  fetch: Fetch,
  state: CrewRecord,
  joiner: Joiner,
  parts: Omit<ExchangeParts, 'hub' | 'keys'>
): Promise<Exchange> {
  const { link } = state;
  const keys = await deriveKeys(link.jobKey, link.space);
  const make = (of: CrewRecord): Exchange =>
    new Exchange(of, { ...parts, keys, hub: new HubClient(fetch, of.link, parts.now) });
  const before = make(state);
  if (joiner.device === link.device) return before;
  const { outcome } = await before.run();
  if (outcome !== 'shared') return before;
  const moved = await moveIn(fetch, before.state, joiner);
  await parts.save(moved);
  return make(moved);
}
