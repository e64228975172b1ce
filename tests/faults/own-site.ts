import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BUILD, type Handler, serve } from '../../scripts/serve.js';

/** The built app in a folder of its own, served on a port of its own. */
export interface OwnSite {
  readonly url: string;
  readonly folder: string;
  /** Stops answering, as if the network were gone for good. */
  stop(): void;
  remove(): void;
}

/**
 * Copies and serves the built app, so that a test may change its files or stop its server. The
 * compressed twins of files are left out, so that a change shows.
 */
export async function ownSite(handlers: Handler[] = []): Promise<OwnSite> {
  const folder = mkdtempSync(join(tmpdir(), 'evencourse-site-'));
  const filter = (path: string): boolean => !/\.(br|gz)$/.test(path);
  cpSync(process.env.SITE_FOLDER ?? BUILD, folder, { recursive: true, filter });
  const { url, close } = await serve(0, { folder, handlers });
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
