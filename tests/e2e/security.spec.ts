import { expect as plainExpect, test as plainTest } from '@playwright/test';
import { backUp } from '../faults/files.ts';
import { JOB_SCREENS } from '../faults/screens.ts';
import { startSorting } from '../faults/sorting.ts';
import { expect, openExample, ownLetters, startJob, test } from './helpers.ts';

test('no screen asks another host for anything, and each says which scripts may run', async ({
  page,
  baseURL
}) => {
  const hosts = new Set<string>();
  page.context().on('request', (request) => {
    if (/^(https?|wss?):/.test(request.url())) hosts.add(new URL(request.url()).origin);
  });
  const job = await openExample(page);
  for (const address of ['/', '/settings', ...JOB_SCREENS.map((screen) => `${job}${screen}`)]) {
    await page.goto(address);
    await expect(page.locator('h1').first(), address).toBeAttached();
    const policy = await page
      .locator('meta[http-equiv="content-security-policy" i]')
      .getAttribute('content');
    const scripts = /script-src ([^;]*)/.exec(policy ?? '')?.[1] ?? '';
    expect(scripts, address).toContain("'self'");
    expect(scripts, address).not.toMatch(/unsafe|\*|https?:/);
    expect(policy, address).toContain("default-src 'self'");
    expect(policy, address).toContain("object-src 'none'");
  }
  expect([...hosts]).toEqual([new URL(String(baseURL)).origin]);
});

// What the policy blocks is said in the console, so this test does not ask for silence.
plainTest(
  'the policy stops injected scripts, handlers, eval and foreign requests',
  async ({ page }) => {
    await page.goto('/');
    await page.getByRole('button', { name: 'Open the worked example' }).waitFor();
    const blocked = await page.evaluate(async () => {
      const violations: string[] = [];
      addEventListener('securitypolicyviolation', (event) =>
        violations.push(`${event.effectiveDirective} ${event.blockedURI}`)
      );
      const ran: string[] = [];
      Object.assign(window, { ran, violations });
      const failed = (element: HTMLElement): Promise<unknown> =>
        new Promise((done) => element.addEventListener('error', done));
      const script = document.createElement('script');
      script.textContent = "window.ran.push('script')";
      document.head.append(script);
      const image = document.createElement('img');
      image.setAttribute('onerror', "window.ran.push('handler')");
      const imageFailed = failed(image);
      image.src = 'data:image/png;base64,AAAA';
      document.body.append(image);
      const foreign = document.createElement('script');
      const foreignFailed = failed(foreign);
      foreign.src = 'https://example.org/x.js';
      document.head.append(foreign);
      setTimeout("window.ran.push('timer')", 0);
      // Called from a timer: what the test itself evaluates is exempt from the policy.
      const evaluated = await new Promise<string>((done) => {
        setTimeout(() => {
          try {
            new Function("window.ran.push('function')")();
            done('ran');
          } catch (error) {
            done((error as Error).name);
          }
        }, 0);
      });
      const fetched = await fetch('https://example.org/').then(
        () => 'answered',
        () => 'refused'
      );
      await Promise.all([imageFailed, foreignFailed]);
      return { ran, evaluated, fetched };
    });
    plainExpect(blocked.ran).toEqual([]);
    plainExpect(blocked.evaluated).toBe('EvalError');
    plainExpect(blocked.fetched).toBe('refused');
    for (const kind of [
      'script-src-elem inline',
      'script-src-attr inline',
      'connect-src https',
      'script-src eval'
    ])
      await plainExpect
        .poll(() =>
          page.evaluate(() => (window as unknown as { violations: string[] }).violations.join('\n'))
        )
        .toContain(kind);
  }
);

const HOSTILE = [
  '<img src=x onerror="document.title=1">',
  '<script>document.title=1</script>',
  '__proto__',
  'constructor',
  '{{7*7}}${7*7}',
  '\u202egnp.exe\u202c',
  '../../etc/passwd',
  'CON',
  'é̀̂ 棟 🏚 "quoted" \\ / : * ? |',
  'x'.repeat(200)
];

test('hostile names are shown as the text they are, and give a plain file name', async ({
  page
}) => {
  for (const name of HOSTILE) {
    const job = await startJob(page, name);
    await expect(page.locator('.top strong')).toHaveText(name);
    expect(await page.locator('main img, main script').count(), name).toBe(0);
    const file = await backUp(page, job);
    expect(file.name, name).toMatch(
      /^[\p{L}\p{M}\p{N}_][\p{L}\p{M}\p{N} _-]{0,95}\.evencourse\.jsonl$/u
    );
    expect(file.name, name).not.toMatch(/^(con|prn|aux|nul)\./i);
    expect((JSON.parse(file.text.split('\n')[0]) as { name: string }).name).toBe(name);
  }
  await page.goto('/');
  await expect(page.locator('main li strong')).toHaveCount(HOSTILE.length);
  await ownLetters(page);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide, 'nothing runs out of the page').toBeLessThanOrEqual(0);
});

test('hostile pallet names are shown as the text they are', async ({ page }) => {
  await startSorting(page);
  for (const name of ['<b>bold</b><img src=x>', '__proto__', 'constructor', '\u202eABC']) {
    await page.getByRole('button', { name: 'Pallets' }).click();
    await page.getByLabel('Name on the pallet').fill(name);
    await page.getByLabel('Slates on it').fill('10');
    await page.getByRole('button', { name: 'Add pallet' }).click();
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await expect(page.locator('table').getByText(name, { exact: true }).first()).toBeAttached();
  }
  expect(await page.locator('main img, main b').count()).toBe(0);
  expect(await page.evaluate(() => ({}) as { label?: string })).toEqual({});
});
