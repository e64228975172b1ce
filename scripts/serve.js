import { existsSync } from 'node:fs';
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';

export const BUILD = fileURLToPath(new URL('../build', import.meta.url));

/**
 * Serves the built app, as any static host would: files as they are, the fallback page for a job's
 * pages.
 *
 * @param {number} port 0 for any free one
 * @param {string} [folder]
 * @returns {Promise<{ url: string, close: () => void }>}
 */
export function serve(port, folder = BUILD) {
  if (!existsSync(folder)) throw new Error(`${folder} is not there: run "npm run build" first`);
  const assets = sirv(folder, { single: 'fallback.html', dev: true, etag: true });
  const server = createServer((request, response) => {
    assets(request, response, () => void response.writeHead(404).end());
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const address = /** @type {import('node:net').AddressInfo} */ (server.address());
      resolve({ url: `http://127.0.0.1:${address.port}/`, close: () => server.close() });
    });
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { url } = await serve(Number(process.argv[2] ?? 0));
  console.log(url);
}
