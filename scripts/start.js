/**
 * npm start: installs what is missing, builds the app, serves it and prints its address. PORT takes
 * another port than 4173; HOST=0.0.0.0 lets other devices on the network in. HUB=0 leaves the hub
 * out, through which the devices of a crew share their jobs.
 */
import { networkInterfaces } from 'node:os';
import { ensureInstalled, fail, run } from './tools.js';

ensureInstalled();
if (!run('npm', ['run', '--silent', 'build'])) fail('The build failed: see the message above.');

const { serve } = await import('./serve.js');
const { hubKeyLink, openHubForServer, terminalQr } = await import('./hub.js');
const host = process.env.HOST || '127.0.0.1';
const base = process.env.BASE_PATH ?? '';
const hub = process.env.HUB === '0' ? undefined : await openHub();
const options = { host, base, handlers: hub ? [hub.answer] : [] };
const { url, port } = await serve(wantedPort(), options).catch((error) => {
  if (error.code === 'EADDRINUSE' && !process.env.PORT) return serve(0, options);
  return fail(`The app cannot be served: ${error.message}. Set another HOST or PORT.`);
});
console.log(
  `\nEvencourse is ready: ${url}\nOpen it and tap "Open the worked example". Stop with Ctrl+C.`
);
const others = host === '0.0.0.0' || host === '::' ? ownAddresses() : [];
for (const address of others) {
  const link = `http://${address}:${port}${base}/`;
  console.log(`\nFrom another device on this network: ${link}\n${terminalQr(link)}`);
}
if (hub) sayHub(hub);
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM']))
  process.once(signal, () => void Promise.resolve(hub?.close()).finally(() => process.exit(0)));

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

/** Opens the hub, or says why it cannot. */
function openHub() {
  return openHubForServer().catch((error) =>
    fail(`The hub cannot open its data. ${error.message}`)
  );
}

/** @param {Awaited<ReturnType<typeof openHub>>} hub */
function sayHub(hub) {
  console.log(`\nThe hub keeps the jobs that crews share, sealed, in ${hub.where}.`);
  if (hub.newKey) {
    const link = hubKeyLink(process.env.PUBLIC_URL ?? url, hub.newKey);
    console.log(
      `This is the hub key. Whoever has it can start a crew here. It is shown this once: open it on
your own device, or keep it safe. (NEW_HUB_KEY=1 npm start makes another.)\n\n${link}\n${terminalQr(link)}`
    );
  }
}
