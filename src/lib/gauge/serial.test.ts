import { describe, expect, it } from 'vitest';
import { learnLinePattern } from './line-pattern.ts';
import { ManualTimer } from '../../../tests/support/manual-timer.ts';
import {
  type SerialEvent,
  type SerialPortLike,
  type SerialSettings,
  SerialGauge
} from './serial.ts';

/** A port whose bytes, faults and unplugging the test sends. */
class EmulatedPort implements SerialPortLike {
  readable: ReadableStream<Uint8Array> | null = null;
  isOpen = false;
  #controller: ReadableStreamDefaultController<Uint8Array> | null = null;

  async open(): Promise<void> {
    if (this.isOpen) throw new Error('already open');
    this.isOpen = true;
    this.#renew();
  }

  async close(): Promise<void> {
    this.isOpen = false;
    this.readable = null;
  }

  send(text: string): void {
    this.#controller?.enqueue(Uint8Array.from(text, (sign) => sign.charCodeAt(0)));
  }

  /** A framing error: the stream fails and the port offers a new one. */
  loseBytes(): void {
    const failed = this.#controller;
    this.#renew();
    failed?.error(new Error('framing'));
  }

  unplug(): void {
    this.readable = null;
    this.#controller?.error(new Error('device lost'));
  }

  #renew(): void {
    this.readable = new ReadableStream({
      start: (controller) => void (this.#controller = controller)
    });
  }
}

const lesson = learnLinePattern(['6.40', '5.95', '7.10']);
const SETTINGS: SerialSettings = {
  unit: 'mm',
  pattern: lesson.ok ? lesson.pattern : null,
  ending: 'line'
};

async function openGauge(settings = SETTINGS) {
  const port = new EmulatedPort();
  const timer = new ManualTimer();
  const events: SerialEvent[] = [];
  const gauge = new SerialGauge(port, settings, timer, (event) => void events.push(event));
  await gauge.open({ baudRate: 9600 });
  timer.pass(1000);
  const told = () =>
    events.flatMap((event): (string | number)[] => {
      if (event.kind === 'line') return [];
      if (event.kind === 'noise') return [`${event.reason} ${event.text}`];
      if (event.kind !== 'reading') return [event.kind];
      return [event.reading.ok ? event.reading.valueMm : event.reading.reason];
    });
  return { port, timer, gauge, events, told };
}

/** Lets the reading loop take what was sent. */
const settle = () => new Promise((resolve) => setTimeout(resolve));

describe('SerialGauge', () => {
  it('reads lines, reports noise, and goes on', async () => {
    const { port, told } = await openGauge();
    port.send('6.40\r\n6.');
    port.send('40\r\nlow battery\r\n99.00\r\n');
    await settle();
    expect(told()).toEqual([6.4, 6.4, 'other-line low battery', 'too-thick']);
  });

  it('only shows lines in the set-up, and reads once it has learnt', async () => {
    const { port, gauge, events, told } = await openGauge({ ...SETTINGS, pattern: null });
    port.send('6.40\r');
    await settle();
    expect(events).toEqual([{ kind: 'line', text: '6.40', isWhole: true }]);
    gauge.learn(SETTINGS);
    port.send('7.10\r');
    await settle();
    expect(told()).toEqual([7.1]);
  });

  it('ends a line by a pause where the gauge sends no end', async () => {
    const { port, timer, told } = await openGauge({ ...SETTINGS, ending: 'pause' });
    port.send('6.4');
    await settle();
    timer.pass(1000);
    expect(told()).toEqual([]);
    port.send('2');
    await settle();
    timer.pass(200);
    expect(told()).toEqual([6.42]);
  });

  it('reports the line torn by lost bytes, distrusts its rest, and goes on', async () => {
    const { port, timer, told } = await openGauge();
    port.send('16');
    await settle();
    port.loseBytes();
    await settle();
    port.send('.40\r');
    await settle();
    timer.pass(1000);
    port.send('7.10\r');
    await settle();
    expect(told()).toEqual(['torn 16', 'bytes-lost', 'torn .40', 7.1]);
  });

  it('reports the torn line when unplugged, and frees the port', async () => {
    const { port, told } = await openGauge();
    port.send('6.40\r7.1');
    await settle();
    port.unplug();
    await settle();
    expect(told()).toEqual([6.4, 'torn 7.1', 'unplugged']);
    expect(port.isOpen).toBe(false);
  });

  it('takes a port that only fails for unplugged', async () => {
    const { port, told } = await openGauge();
    for (let fault = 0; fault < 12; fault++) {
      port.loseBytes();
      await settle();
    }
    expect(told()).toEqual([...new Array(10).fill('bytes-lost'), 'unplugged']);
  });

  it('closes at request and opens again', async () => {
    const { port, timer, gauge, told } = await openGauge();
    await gauge.close();
    expect(told()).toEqual(['closed']);
    await gauge.open({ baudRate: 9600 });
    timer.pass(1000);
    port.send('6.40\r');
    await settle();
    expect(told()).toEqual(['closed', 6.4]);
  });

  it('leaves it to the caller to tell that the port cannot be opened', async () => {
    const { gauge } = await openGauge();
    await expect(gauge.open({ baudRate: 9600 })).rejects.toThrow('already open');
  });
});
