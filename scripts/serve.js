import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';

export const BUILD = fileURLToPath(new URL('../build', import.meta.url));

/** @type {{ path: string, headers: Record<string, string> }[]} */
const HEADERS = JSON.parse(
  readFileSync(new URL('../deploy/headers.json', import.meta.url), 'utf8')
);

/**
 * Answers a request and gives true, or leaves it alone and gives false. The path no longer has the
 * base of the site in front.
 *
 * @typedef {(
 *   request: import('node:http').IncomingMessage,
 *   response: import('node:http').ServerResponse
 * ) => boolean | Promise<boolean>} Handler
 */

/**
 * Serves the built app as a static host should: files with the headers of `deploy/headers.json`,
 * compressed where that is ready, and the fallback page for a job's pages.
 *
 * @param {number} port 0 for any free one
 * @param {object} [options]
 * @param {string} [options.host] where to listen; another than this machine's own lets others in
 * @param {string} [options.folder] the built app
 * @param {string} [options.base] path of the app on the site, such as "/slates"
 * @param {Handler[]} [options.handlers] asked in turn before the files are looked at
 * @returns {Promise<{ url: string, port: number, close: () => void }>}
 */
export function serve(port, options = {}) {
  const { host = '127.0.0.1', folder = BUILD, base = '', handlers = [] } = options;
  if (!existsSync(folder)) throw new Error(`${folder} is not there: run "npm run build" first`);
  const answers = [...handlers, files(folder)];
  const server = createServer((request, response) => {
    void answer(request, response, base, answers);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      const { port: given } = /** @type {import('node:net').AddressInfo} */ (server.address());
      const name = ['0.0.0.0', '::'].includes(host) ? '127.0.0.1' : host;
      const url = `http://${name.includes(':') ? `[${name}]` : name}:${given}${base}/`;
      resolve({ url, port: given, close: () => server.close() });
    });
  });
}

/**
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {string} base
 * @param {Handler[]} answers
 */
async function answer(request, response, base, answers) {
  try {
    const path = request.url ?? '/';
    if (base && path === base) return void response.writeHead(308, { Location: `${base}/` }).end();
    if (path.startsWith(`${base}/`)) {
      request.url = path.slice(base.length);
      for (const one of answers) if (await one(request, response)) return;
    }
    response.writeHead(404).end();
  } catch (error) {
    console.error(error);
    if (!response.headersSent) response.writeHead(500);
    response.end();
  }
}

/**
 * @param {string} folder
 * @returns {Handler}
 */
function files(folder) {
  // dev: the folder is looked at for each request, so that a new build is served at once.
  const options = { single: 'fallback.html', dev: true, etag: true, brotli: true, gzip: true };
  const assets = sirv(folder, options);
  return (request, response) =>
    new Promise((resolve) => {
      response.once('close', () => resolve(true));
      for (const { path, headers } of HEADERS)
        if ((request.url ?? '/').startsWith(path.replace('*', '')))
          for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
      assets(request, response, () => resolve(false));
    });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [port, base] = process.argv.slice(2);
  console.log((await serve(Number(port ?? 0), { base, host: process.env.HOST })).url);
}
