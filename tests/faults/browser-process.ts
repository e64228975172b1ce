import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { type Browser, type Page, chromium } from '@playwright/test';

/** A browser of its own process with its profile on the disk, so that it can be killed. */
export class BrowserProcess {
  readonly #process: ChildProcess;
  readonly #browser: Browser;
  readonly page: Page;

  private constructor(process: ChildProcess, browser: Browser, page: Page) {
    this.#process = process;
    this.#browser = browser;
    this.page = page;
  }

  static async start(profile: string, baseURL: string): Promise<BrowserProcess> {
    const program = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
    const flags = [
      '--headless=new',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--disable-background-networking',
      '--no-first-run',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank'
    ];
    // A process group of its own, so that the kill takes all of the browser's processes at once.
    const child = spawn(program, flags, { stdio: ['ignore', 'ignore', 'pipe'], detached: true });
    const browser = await chromium.connectOverCDP(await debuggingAddress(child));
    const context = browser.contexts()[0];
    const page = context.pages()[0] ?? (await context.newPage());
    // The profile's own context knows no base address.
    const goto = page.goto.bind(page);
    page.goto = (url, options) => goto(new URL(url, baseURL).href, options);
    return new BrowserProcess(child, browser, page);
  }

  /** SIGKILL to every process of the browser: nothing can be written any more. */
  async kill(): Promise<void> {
    const ended = once(this.#process, 'exit');
    if (this.#process.pid === undefined) throw new Error('the browser has no process');
    process.kill(-this.#process.pid, 'SIGKILL');
    await ended;
    await this.#browser.close().catch(() => undefined);
  }
}

async function debuggingAddress(child: ChildProcess): Promise<string> {
  if (!child.stderr) throw new Error('the browser has no output');
  for await (const line of createInterface({ input: child.stderr })) {
    const found = /DevTools listening on (ws:\S+)/.exec(line);
    if (!found) continue;
    child.stderr.resume(); // what it says later is not needed, but must not fill the pipe
    return found[1];
  }
  throw new Error('the browser ended before it answered');
}
