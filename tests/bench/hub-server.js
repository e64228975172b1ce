/**
 * The built app and a hub of its own in one process, for the benches of the crew. Says its address
 * and the link that lets a device start crews, then, for each line that comes in, the memory that
 * it holds, MB. Ends when its input ends.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { hubKeyLink, openHubForServer } from '../../scripts/hub.js';
import { serve } from '../../scripts/serve.js';

const folder = mkdtempSync(join(tmpdir(), 'evencourse-hub-'));
const hub = await openHubForServer({ HUB_DATA: folder });
const { url, close } = await serve(0, { handlers: [hub.answer] });
if (!hub.newKey) throw new Error('a new hub gives its key');
console.log(JSON.stringify({ url, key: hub.newKey, keyLink: hubKeyLink(url, hub.newKey) }));
for await (const line of createInterface({ input: process.stdin }))
  if (line) console.log((process.memoryUsage.rss() / 2 ** 20).toFixed(0));
close();
await hub.close();
rmSync(folder, { recursive: true, force: true });
process.exit();
