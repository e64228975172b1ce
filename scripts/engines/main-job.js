/**
 * What an engine is asked for: to show an address, and to work out an expression in the page, which
 * gives a number, a text or a yes or no.
 *
 * @typedef {object} EnginePage
 * @property {(url: string) => Promise<unknown>} goto
 * @property {(expression: string) => Promise<any>} evaluate
 * @property {() => Promise<void>} close
 */

const TAPS = 20;
/** Generous, for a slow machine. */
const PATIENCE_MS = 180_000;

/** Slates that Sort counts on the piles of the pallet in use. */
const ON_PILES = `[...document.querySelectorAll('.piles button .count')]
  .reduce((sum, one) => sum + Number(one.textContent.replace(/\\D/g, '')), 0)`;
/** Courses of the plan, in the table that a fold holds. */
const COURSES = `(document.querySelectorAll('main details').forEach((fold) => (fold.open = true)),
  document.querySelectorAll('.scroll-x:has(tfoot) tbody tr').length)`;

/**
 * The worked example, 20 taps, the plan, a reload, and a start without a network.
 *
 * @param {EnginePage} page
 * @param {{ url: string, close: () => void }} site
 * @returns {Promise<string>} the figures seen
 */
export async function mainJob(page, site) {
  await page.goto(site.url);
  await until(page, 'the button of the example', button('Open the worked example'));
  await page.evaluate(`${button('Open the worked example')}.click()`);
  await until(page, 'the job', `/\\/job\\/[0-9a-f-]+$/.test(location.pathname)`);
  const job = new URL(await page.evaluate('location.href')).href;

  await page.goto(`${job}/sort`);
  await until(page, 'the piles', `document.querySelectorAll('.piles button').length > 2`);
  const before = await page.evaluate(ON_PILES);
  for (let tap = 0; tap < TAPS; tap++) {
    // Pile after pile: the same one twice within 150 ms is a bounce of one tap.
    await page.evaluate(`document.querySelectorAll('.piles button')[${tap % 3}].click()`);
    await until(page, `tap ${tap + 1} on its pile`, `${ON_PILES} === ${before + tap + 1}`);
    await until(page, `tap ${tap + 1} saved`, status('saved'));
  }
  const after = before + TAPS;
  const kept = `${ON_PILES} === ${after}`;

  await page.goto(`${job}/courses`);
  await until(page, 'a plan', `${COURSES} > 0`);
  const courses = await page.evaluate(COURSES);
  await page.goto(`${job}/sort`);
  await until(page, 'the taps after a reload', kept);

  await page.goto(new URL('settings', site.url).href);
  await until(
    page,
    'ready to start without a network',
    `/Starts without a network\\s+yes/.test(document.body.innerText)`
  );
  site.close();
  await page.goto(`${job}/sort`);
  await until(page, 'the taps without a network', kept);
  await page.goto(`${job}/courses`);
  await until(page, 'the plan without a network', `${COURSES} === ${courses}`);
  return `${TAPS} taps, ${after} slates on the piles, ${courses} courses, also without a network`;
}

/** @param {string} name */
function button(name) {
  return `[...document.querySelectorAll('button')].find((one) => one.innerText.trim() === '${name}')`;
}

/** @param {string} word */
function status(word) {
  return `document.querySelector('.verdict .status')?.textContent.trim() === '${word}'`;
}

/**
 * @param {EnginePage} page
 * @param {string} what
 * @param {string} expression
 */
async function until(page, what, expression) {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const seen = await page.evaluate(`Boolean(${expression})`).catch((error) => String(error));
    if (seen === true) return;
    if (Date.now() > end) {
      const words = await page.evaluate('document.body.innerText.slice(0, 1500)').catch(String);
      throw new Error(`never seen: ${what} (${seen}). On screen:\n${words}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
