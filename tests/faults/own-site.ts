import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BUILD, serve } from '../../scripts/serve.js';

/** The built app in a folder of its own, served on a port of its own. */
export interface OwnSite {
  readonly url: string;
  readonly folder: string;
  /** Stops answering, as if the network were gone for good. */
  stop(): void;
  remove(): void;
}

/** Copies and serves the built app, so that a test may change its files or stop its server. */
export async function ownSite(): Promise<OwnSite> {
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-site-'));
  cpSync(process.env.SITE_FOLDER ?? BUILD, folder, { recursive: true });
  const { url, close } = await serve(0, folder);
  return {
    url,
    folder,
    stop: close,
    remove: () => {
      close();
      rmSync(folder, { recursive: true, force: true });
    }
  };
}
