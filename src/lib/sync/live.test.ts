import { describe, expect, it } from 'vitest';
import { HubRefused, HubSilent } from './hub-client.ts';
import { LiveLine, SILENT_MS } from './live.ts';

/** A clock that a test moves. */
function newClock() {
  let now = 0;
  const due = new Set<{ at: number; done: () => void }>();
  return {
    after(ms: number, done: () => void) {
      const one = { at: now + ms, done };
      due.add(one);
      return () => void due.delete(one);
    },
    async pass(ms: number) {
      now += ms;
      for (const one of [...due].filter(({ at }) => at <= now)) {
        due.delete(one);
        one.done();
      }
      await settled();
    }
  };
}

/** Lets everything that can go on go on. */
const settled = () => new Promise((resolve) => setTimeout(resolve));

/** A hub whose lines a test speaks on. */
function newHub(clock = newClock()) {
  const lines: ReadableStreamDefaultController<Uint8Array>[] = [];
  const log: string[] = [];
  let isDown = false;
  let refuses: HubRefused | undefined;
  const line = new LiveLine({
    hub: {
      async live() {
        log.push('asked');
        if (refuses) throw refuses;
        if (isDown) throw new HubSilent();
        return new ReadableStream({ start: (control) => void lines.push(control) });
      }
    },
    onNews: () => log.push('news'),
    onRemoved: () => log.push('removed'),
    after: (ms, done) => clock.after(ms, done),
    random: () => 1
  });
  return {
    clock,
    line,
    log,
    say: async (text: string) => {
      lines[lines.length - 1].enqueue(new TextEncoder().encode(text));
      await settled();
    },
    goDown: (down = true) => (isDown = down),
    refuse: () => (refuses = new HubRefused(403, 'removed', 0))
  };
}

describe('the line to the hub', () => {
  it('hears of news, and takes an empty line for a sign of life', async () => {
    const { line, log, say } = newHub();
    void line.run();
    await settled();
    await say('{"heads":{}}\n');
    await say('\n');
    await say('["d",7]\n');
    expect(log).toEqual(['asked', 'news', 'news']);
    line.stop();
  });

  it('drops a line that is silent for 45 s, and not one that gives a sign of life', async () => {
    const { line, log, say, clock } = newHub();
    void line.run();
    await settled();
    for (let at = 0; at < 5; at++) {
      await clock.pass(SILENT_MS - 1);
      await say('\n');
    }
    expect(log).toEqual(['asked']);
    await clock.pass(SILENT_MS);
    await clock.pass(1_000);
    expect(log).toEqual(['asked', 'asked']);
    line.stop();
  });

  it('waits longer after each try in vain, a minute at most, and hurries when told', async () => {
    const { line, log, clock, goDown } = newHub();
    goDown();
    void line.run();
    await settled();
    const asked = () => log.filter((word) => word === 'asked').length;
    for (const [seconds, tries] of [
      [1, 2],
      [1, 2],
      [1, 3],
      [4, 4],
      [8, 5]
    ]) {
      await clock.pass(seconds * 1000);
      expect(asked()).toBe(tries);
    }
    for (let minute = 0; minute < 5; minute++) await clock.pass(60_000);
    const before = asked();
    await clock.pass(60_000);
    expect(asked()).toBe(before + 1);
    line.hurry();
    await settled();
    expect(asked()).toBe(before + 2);
    line.stop();
  });

  it('ends when this device was removed', async () => {
    const { line, log, refuse } = newHub();
    refuse();
    await line.run();
    expect(log).toEqual(['asked', 'removed']);
  });

  it('ends when it is stopped, listening or waiting', async () => {
    for (const isDown of [true, false]) {
      const { line, goDown } = newHub();
      goDown(isDown);
      const ended = line.run();
      await settled();
      line.stop();
      await ended;
    }
  });
});
