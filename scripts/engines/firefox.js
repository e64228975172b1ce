import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

/**
 * A page of Firefox, driven by WebDriver BiDi (https://www.w3.org/TR/webdriver-bidi/).
 *
 * @param {string} program
 * @returns {Promise<import('./main-job.js').EnginePage>}
 */
export async function openFirefox(program) {
  const profile = mkdtempSync(join(tmpdir(), 'evencourse-firefox-'));
  const flags = ['--headless', '--no-remote', '--profile', profile, '--remote-debugging-port', '0'];
  const child = spawn(program, flags, {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, HOME: profile }
  });
  const close = async () => {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill();
    await ended;
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const send = await connect(`${await addressOf(child)}/session`);
    await send('session.new', { capabilities: {} });
    const { contexts } = await send('browsingContext.getTree', {});
    const { context } = contexts[0];
    return {
      goto: (url) => send('browsingContext.navigate', { context, url, wait: 'complete' }),
      evaluate: async (expression) => {
        const target = { context };
        const answer = await send('script.evaluate', { expression, target, awaitPromise: true });
        if (answer.type !== 'success')
          throw new Error(JSON.stringify(answer.exceptionDetails.text));
        return answer.result.value;
      },
      close
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** @param {import('node:child_process').ChildProcess} child */
async function addressOf(child) {
  if (!child.stderr) throw new Error('Firefox has no output');
  for await (const line of createInterface({ input: child.stderr })) {
    const found = /BiDi listening on (ws:\S+)/.exec(line);
    if (!found) continue;
    child.stderr.resume();
    return found[1];
  }
  throw new Error('Firefox ended before it answered');
}

/**
 * @param {string} address
 * @returns {Promise<(method: string, params: object) => Promise<any>>}
 */
async function connect(address) {
  const socket = new WebSocket(address);
  /** @type {Map<number, { resolve: (value: any) => void, reject: (reason: Error) => void }>} */
  const waiting = new Map();
  socket.addEventListener('message', ({ data }) => {
    const { id, type, result, message } = JSON.parse(String(data));
    const asked = waiting.get(id);
    waiting.delete(id);
    if (type === 'success') asked?.resolve(result);
    else asked?.reject(new Error(message));
  });
  await new Promise((resolve, reject) => {
    socket.addEventListener('open', resolve);
    socket.addEventListener('error', () => reject(new Error(`${address} does not answer`)));
  });
  let id = 0;
  return (method, params) =>
    new Promise((resolve, reject) => {
      waiting.set(++id, { resolve, reject });
      socket.send(JSON.stringify({ id, method, params }));
    });
}
