import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { EvencourseDatabase } from './database.ts';
import { withReconnect } from './reconnect.ts';

const NAME = 'left page';

/** A page that is put by, or shown again. */
function newPage() {
  const events = new EventTarget();
  const tell = (type: string) =>
    events.dispatchEvent(Object.assign(new Event(type), { persisted: true }));
  return { events, leave: () => tell('pagehide'), show: () => tell('pageshow') };
}

describe('a page that is put by for the Back button', () => {
  it('J31: bars the database to nobody, and does its work when it is shown again', async () => {
    const page = newPage();
    const left = new EvencourseDatabase(NAME, page.events);
    const next = new EvencourseDatabase(NAME, new EventTarget());
    let tries = 0;
    let isReading: (() => void) | undefined;
    const reading = new Promise<void>((resolve) => (isReading = resolve));
    let isWritten = false;

    const work = withReconnect(left, () =>
      left.transaction('r', left.device, async () => {
        tries++;
        // The scripts of a page put by stand still: what it reads never comes to an end.
        do {
          await left.device.get('deviceId');
          isReading?.();
        } while (!isWritten);
        return (await left.device.get('written'))?.value;
      })
    );
    await reading;
    page.leave();
    await next.device.put({ name: 'written', value: 'by the next page' });
    isWritten = true;
    expect(tries).toBe(1);

    page.show();
    expect(await work).toBe('by the next page');
    expect(tries).toBe(2);
    left.close();
    next.close();
  });

  it('begins nothing new until it is shown again', async () => {
    const page = newPage();
    const left = new EvencourseDatabase(NAME, page.events);
    await left.open();
    page.leave();
    const log: string[] = [];
    const work = withReconnect(left, async () => void log.push('worked'));
    await left.device.count();
    log.push('shown');
    page.show();
    await work;
    expect(log).toEqual(['shown', 'worked']);
    left.close();
  });

  it('goes on as it is when it is left for good or only hidden', async () => {
    const page = newPage();
    const database = new EvencourseDatabase(NAME, page.events);
    const read = database.transaction('r', database.device, () => database.device.count());
    page.events.dispatchEvent(Object.assign(new Event('pagehide'), { persisted: false }));
    expect(await read).toBeGreaterThan(0);
    database.close();
  });
});
