/** npm start: installs what is missing, builds the app, serves it and prints its address. */
import { ensureInstalled, fail, run } from './tools.js';

ensureInstalled();
if (!run('npm', ['run', '--silent', 'build'])) fail('The build failed: see the message above.');

const { serve } = await import('./serve.js');
const wanted = Number(process.env.PORT ?? 4173);
const { url } = await serve(wanted).catch(() => serve(0));
console.log(
  `\nEvencourse is ready: ${url}\nOpen it and tap "Open the worked example". Stop with Ctrl+C.`
);
