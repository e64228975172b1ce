import { isIP } from 'node:net';
import { join } from 'node:path';
import { getRequest, setResponse } from '@sveltejs/kit/node';
import { generate } from 'lean-qr';
import { buildHub } from './build-hub.js';
import { ROOT } from './tools.js';

/**
 * Opens the hub for the server that also serves the app: in PostgreSQL where DATABASE_URL is set,
 * else in data/hub.db (HUB_DATA takes another folder). NEW_HUB_KEY=1 makes a new key.
 *
 * @param {Record<string, string | undefined>} env
 * @returns {Promise<{ answer: (request: import('node:http').IncomingMessage,
 *   response: import('node:http').ServerResponse) => Promise<boolean>,
 *   newKey: string | undefined, where: string, close: () => Promise<void> }>}
 */
export async function openHubForServer(env = process.env) {
  const { openHub } = /** @type {typeof import('../src/hub/index.ts')} */ (
    await import(await buildHub())
  );
  const file = join(env.HUB_DATA ?? join(ROOT, 'data'), 'hub.db');
  const databaseUrl = env.DATABASE_URL || undefined;
  const hub = await openHub({ databaseUrl, file }, env.NEW_HUB_KEY === '1', (error) =>
    console.error('The hub could not answer a request:', error)
  );
  return {
    newKey: hub.newKey,
    where: databaseUrl ? 'PostgreSQL' : file,
    close: () => hub.close(),
    async answer(request, response) {
      const path = (request.url ?? '').split('?')[0];
      if (path !== '/hub' && !path.startsWith('/hub/')) return false;
      const asked = await getRequest({ request, base: 'http://hub' });
      await setResponse(response, await hub.handle(asked, addressOf(request)));
      return true;
    }
  };
}

/**
 * Whence a request comes. A proxy on this machine says it in the last address of the list that it
 * adds to; what anyone else claims is not believed.
 *
 * @param {import('node:http').IncomingMessage} request
 */
export function addressOf(request) {
  const near = request.socket.remoteAddress ?? '';
  const isProxy = near === '127.0.0.1' || near === '::1' || near === '::ffff:127.0.0.1';
  const told = String(request.headers['x-forwarded-for'] ?? '')
    .split(',')
    .at(-1)
    ?.trim();
  return isProxy && told && isIP(told) ? told : near;
}

/**
 * A link as a QR code for a terminal, two modules a character.
 *
 * @param {string} text
 */
export function terminalQr(text) {
  const code = generate(text);
  const quiet = 2;
  const lines = [];
  for (let y = -quiet; y < code.size + quiet; y += 2) {
    let line = '';
    for (let x = -quiet; x < code.size + quiet; x++)
      // Light on dark: a terminal is dark, and a camera wants dark modules on light ground.
      line += [' ', '▄', '▀', '█'][Number(!code.get(x, y)) * 2 + Number(!code.get(x, y + 1))];
    lines.push(line);
  }
  return lines.join('\n');
}

/**
 * The link that gives a device the hub key. It stands in the fragment, which is never sent.
 *
 * @param {string} origin such as http://192.168.0.7:4173
 * @param {string} key
 */
export function hubKeyLink(origin, key) {
  return `${origin.replace(/\/$/, '')}/join#hub1.${key}`;
}
