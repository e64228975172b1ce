import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, brotliDecompressSync } from 'node:zlib';
import { request as ask } from 'node:http';
import { BUILD, serve } from '../../scripts/serve.js';
import { expect, test } from './helpers.ts';

const folder = process.env.SITE_FOLDER ?? BUILD;
const script = readdirSync(join(folder, '_app/immutable/entry')).find((n) => n.endsWith('.js'));

test('pages are asked for each time, hashed files never again, and no other site may show them', async ({
  request
}) => {
  for (const path of ['/', '/settings', '/job/1/sort', '/service-worker.js', '/packs.json']) {
    const headers = (await request.get(path)).headers();
    expect(headers['cache-control'], path).toBe('no-cache');
    expect(headers['content-security-policy'], path).toBe("frame-ancestors 'none'");
    expect(headers['x-content-type-options'], path).toBe('nosniff');
  }
  const hashed = await request.get(`/_app/immutable/entry/${script}`);
  expect(hashed.headers()['cache-control']).toBe('public, max-age=31536000, immutable');
  expect((await request.get('/_app/immutable/entry/gone.js')).status()).toBe(404);
});

/** The bytes as they were sent, which a browser would unpack. */
function raw(url: string, encoding: string): Promise<{ encoding?: string; body: Buffer }> {
  return new Promise((resolve, reject) => {
    ask(url, { headers: { 'accept-encoding': encoding } }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({ encoding: response.headers['content-encoding'], body: Buffer.concat(parts) })
      );
    })
      .on('error', reject)
      .end();
  });
}

test('text files are sent compressed, as brotli or gzip, and are the same unpacked', async () => {
  const site = await serve(0, { folder });
  const path = `_app/immutable/entry/${script}`;
  const plain = readFileSync(join(folder, path));
  for (const [name, unpack] of [
    ['br', brotliDecompressSync],
    ['gzip', gunzipSync]
  ] as const) {
    const { encoding, body } = await raw(site.url + path, name);
    expect(encoding).toBe(name);
    expect(body.length).toBeLessThan(plain.length);
    expect(unpack(body).equals(plain)).toBe(true);
  }
  site.close();
});

test('a handler may answer before the files, and one that throws stops nothing', async ({
  request
}) => {
  const site = await serve(0, {
    folder,
    handlers: [
      ({ url }, response) => {
        if (url === '/broken') throw new Error('a handler that broke, on purpose');
        if (url !== '/hello') return false;
        response.end('hello');
        return true;
      }
    ]
  });
  expect(await (await request.get(`${site.url}hello`)).text()).toBe('hello');
  expect((await request.get(`${site.url}broken`)).status()).toBe(500);
  expect((await request.get(site.url)).status()).toBe(200);
  site.close();
});
