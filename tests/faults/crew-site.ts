import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hubKeyLink, openHubForServer } from '../../scripts/hub.js';
import { serve } from '../../scripts/serve.js';

/** The built app beside a hub of its own, on a real file. */
export interface CrewSite {
  readonly url: string;
  /** The link that lets a device start crews here. */
  readonly keyLink: string;
  /** What came to the hub, by path. */
  readonly asked: string[];
  /** The file that the hub keeps everything in. */
  readonly file: string;
  end(): Promise<void>;
}

export async function crewSite(): Promise<CrewSite> {
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-hub-'));
  const hub = await openHubForServer({ HUB_DATA: folder });
  const asked: string[] = [];
  const { url, close } = await serve(0, {
    handlers: [
      (request, response) => {
        if (request.url?.startsWith('/hub')) asked.push(request.url);
        return hub.answer(request, response);
      }
    ]
  });
  if (!hub.newKey) throw new Error('a new hub gives its key');
  return {
    url,
    keyLink: hubKeyLink(url, hub.newKey),
    asked,
    file: join(folder, 'hub.db'),
    async end() {
      close();
      await hub.close();
      rmSync(folder, { recursive: true, force: true });
    }
  };
}
