import type { JobState } from '../job.svelte.ts';
import { words } from '$lib/text';
import type { CrewOutcome } from '$lib/sync';
import type { CrewNews } from './crew-news.ts';

/** How the sharing of a job stands. */
export interface SharedStanding {
  readonly status: 'unknown' | 'alone' | 'linked';
  readonly outcome: CrewOutcome | undefined;
  readonly isCopied: boolean;
  readonly notShared: number;
}

/** How a shared job stands, in one line for every screen; undefined for a job without a crew. */
export function saySharing(sharing: SharedStanding): string | undefined {
  if (sharing.status !== 'linked') return undefined;
  const { crew } = words.text;
  if (sharing.outcome === undefined && sharing.notShared === 0) return crew.state.first;
  if (sharing.outcome === 'removed') return crew.removedStrip;
  return sharing.isCopied ? crew.copiedStrip : crew.strip(sharing.notShared);
}

/** What the others did of late, in words. */
export function sayNews(
  news: readonly CrewNews[],
  { pallets, slopes }: Pick<JobState, 'pallets' | 'slopes'>
): string {
  const said = words.text.crew.news;
  return news
    .map((one) => {
      if (one.kind === 'sorted') {
        const pallet = pallets.find(({ palletId }) => palletId === one.palletId);
        return said.sorted(one.name, one.slates, pallet?.label ?? '');
      }
      const slope = slopes.find(({ slopeId }) => slopeId === one.slopeId);
      return said.laidToo(one.name, slope?.name ?? '', one.course);
    })
    .join('. ');
}
