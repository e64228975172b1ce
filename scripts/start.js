/**
 * npm start: installs what is missing, builds the app, serves it and prints its address. PORT takes
 * another port than 4173; HOST=0.0.0.0 lets other devices on the network in.
 */
import { networkInterfaces } from 'node:os';
import { ensureInstalled, fail, run } from './tools.js';

ensureInstalled();
if (!run('npm', ['run', '--silent', 'build'])) fail('The build failed: see the message above.');

const { serve } = await import('./serve.js');
const host = process.env.HOST || '127.0.0.1';
const base = process.env.BASE_PATH ?? '';
const { url, port } = await serve(wantedPort(), { host, base }).catch((error) => {
  if (error.code === 'EADDRINUSE' && !process.env.PORT) return serve(0, { host, base });
  return fail(`The app cannot be served: ${error.message}. Set another HOST or PORT.`);
});
console.log(
  `\nEvencourse is ready: ${url}\nOpen it and tap "Open the worked example". Stop with Ctrl+C.`
);
if (host === '0.0.0.0' || host === '::')
  for (const address of ownAddresses())
    console.log(`From another device on this network: http://${address}:${port}${base}/`);

/** The port asked for. */
function wantedPort() {
  const wanted = Number(process.env.PORT || 4173);
  if (Number.isInteger(wanted) && wanted >= 0 && wanted < 65_536) return wanted;
  return fail(`PORT is "${process.env.PORT}": give a whole number from 0 to 65535.`);
}

/** Addresses of this machine that others on the network may reach. */
function ownAddresses() {
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
}
