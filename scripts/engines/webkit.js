import { spawn } from 'node:child_process';
import { createServer } from 'node:net';

/**
 * A page of WebKitGTK's MiniBrowser, driven by WebDriver (https://www.w3.org/TR/webdriver2/), on a
 * screen of its own that nobody sees.
 *
 * @param {{ driver: string, browser: string, screen: string }} programs
 * @returns {Promise<import('./main-job.js').EnginePage>}
 */
export async function openWebKit({ driver, browser, screen }) {
  const display = spawn(
    screen,
    ['-displayfd', '3', '-screen', '0', '390x844x24', '-nolisten', 'tcp'],
    {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe']
    }
  );
  const number = await new Promise((resolve, reject) => {
    display.once('exit', () => reject(new Error(`${screen} ended before it answered`)));
    display.stdio[3]?.once('data', (data) => resolve(String(data).trim()));
  });
  const port = await freePort();
  const env = { ...process.env, DISPLAY: `:${number}`, GDK_BACKEND: 'x11', NO_AT_BRIDGE: '1' };
  const child = spawn(driver, [`--port=${port}`], { stdio: 'ignore', env });
  let session = '';
  const close = async () => {
    if (session) await ask('DELETE', session).catch(() => undefined);
    for (const one of [child, display]) {
      const ended = new Promise((resolve) => one.once('exit', resolve));
      if (one.kill()) await ended;
    }
  };
  /** @type {(method: string, path: string, body?: object) => Promise<any>} */
  const ask = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      body: body && JSON.stringify(body)
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  try {
    await answers(() => ask('GET', '/status'));
    const options = { binary: browser, args: ['--automation'] };
    const capabilities = { alwaysMatch: { 'webkitgtk:browserOptions': options } };
    const { sessionId } = await ask('POST', '/session', { capabilities });
    session = `/session/${sessionId}`;
    await ask('POST', `${session}/timeouts`, { script: 300_000, pageLoad: 300_000 });
    return {
      goto: (url) => ask('POST', `${session}/url`, { url }),
      evaluate: (expression) => {
        const script = `const [done] = arguments; (async () => ${expression})().then(done, (e) => done('threw: ' + e));`;
        return ask('POST', `${session}/execute/async`, { script, args: [] });
      },
      close
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** @returns {Promise<number>} */
function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = /** @type {import('node:net').AddressInfo} */ (server.address());
      server.close(() => resolve(port));
    });
  });
}

/** @param {() => Promise<unknown>} question */
async function answers(question) {
  for (let tries = 1; ; tries++)
    try {
      return await question();
    } catch (error) {
      if (tries === 300) throw error;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
}
