import { describe, expect, it } from 'vitest';
import { ManualTimer } from '../../../tests/support/manual-timer.ts';
import type { WedgeOutcome, WedgeSettings } from './wedge-state.ts';
import { type CaptureField, WedgeListener } from './wedge-listener.ts';

class Field extends EventTarget implements CaptureField {
  value = '';
  readonly tagName = 'INPUT';
  readonly type = 'text';
}

/** An event with the properties a browser would give it; without a time of its own unless given. */
function eventWith(type: string, properties: object, target?: object): Event {
  const event = new Event(type, { cancelable: true });
  for (const [name, value] of Object.entries({
    timeStamp: 0,
    ...properties,
    ...(target && { target })
  }))
    Object.defineProperty(event, name, { value });
  return event;
}

function openPage(ending: WedgeSettings['ending'] = { kind: 'key' }) {
  const page = new EventTarget();
  const field = new Field();
  const timer = new ManualTimer();
  const outcomes: WedgeOutcome[] = [];
  const listener = new WedgeListener({ unit: 'mm', ending }, timer, {
    onOutcome: (outcome) => void outcomes.push(outcome)
  });
  const stop = listener.listen(page, field);
  const press = (key: string, target: object = field, more: object = {}) => {
    const code = /\d/.test(key) ? `Digit${key}` : key;
    const event = eventWith('keydown', { key, code, keyCode: 0, ...more }, target);
    page.dispatchEvent(event);
    timer.pass(20);
    return event.defaultPrevented;
  };
  const compose = (value: string) => {
    press('Unidentified', field, { code: '', keyCode: 229 });
    field.value = value;
    field.dispatchEvent(eventWith('input', { isComposing: true }));
  };
  const told = () => outcomes.map(({ reading }) => (reading.ok ? reading.valueMm : reading.reason));
  return { page, field, timer, listener, stop, press, compose, told };
}

describe('WedgeListener', () => {
  it('swallows a whole burst wherever the focus is, going down and coming up', () => {
    const { page, press, told } = openPage();
    const button = { tagName: 'BUTTON' };
    expect([...'6.4'].map((key) => press(key, button))).toEqual([true, true, true]);
    expect(press('Enter', button)).toBe(true);
    const up = eventWith('keyup', { key: 'Enter', code: 'Enter' }, button);
    page.dispatchEvent(up);
    expect(up.defaultPrevented).toBe(true);
    expect(told()).toEqual([6.4]);
  });

  it('goes by when a key was pressed, so that a page that hears of it late tears no burst', () => {
    const { press, timer, told, listener } = openPage({ kind: 'pause', decimals: 2 });
    timer.pass(5_000);
    press('6', undefined, { timeStamp: 5_000 });
    timer.pass(200); // the page is busy
    for (const [place, key] of [...'.41'].entries())
      press(key, undefined, { timeStamp: 5_010 + 10 * place });
    expect(listener.state.slowGaps).toBe(0);
    timer.pass(400);
    expect(told()).toEqual([6.41]);
  });

  it('leaves other fields, shortcuts and quiet buttons alone', () => {
    const { press, timer, told } = openPage();
    for (const target of [
      { tagName: 'INPUT', type: 'text' },
      { tagName: 'TEXTAREA' },
      { tagName: 'DIV', isContentEditable: true }
    ])
      for (const key of ['6', 'Enter']) expect(press(key, target)).toBe(false);
    expect(press('z', undefined, { ctrlKey: true })).toBe(false);
    timer.pass(5000);
    expect(press('Enter', { tagName: 'BUTTON' })).toBe(false);
    expect(press(' ', { tagName: 'BUTTON' })).toBe(false);
    expect(told()).toEqual([]);
  });

  it('reads Android text from the field, composed or not', () => {
    const { press, compose, field, told } = openPage();
    for (const value of ['6', '6.', '6.4']) compose(value);
    expect(press('Enter', field, { isComposing: true })).toBe(true);
    for (const value of ['6.47', '6.47,', '6.47,1']) compose(value);
    const lineBreak = eventWith('beforeinput', { inputType: 'insertLineBreak' });
    field.dispatchEvent(lineBreak);
    expect(lineBreak.defaultPrevented).toBe(true);
    expect(told()).toEqual([6.4, 7.1]);
  });

  it('empties the field between readings and loses nothing by it', () => {
    const { field, press, told } = openPage();
    for (let reading = 0; reading < 500; reading++) {
      for (const sign of '6.40') {
        press('Unidentified', field, { code: '', keyCode: 229 });
        field.value += sign;
        field.dispatchEvent(eventWith('input', { isComposing: false }));
      }
      press('Enter');
      field.dispatchEvent(eventWith('input', { isComposing: false }));
    }
    expect(told()).toEqual(new Array(500).fill(6.4));
    expect(field.value.length).toBeLessThanOrEqual(200);
  });

  it('ends a reading by its own alarm where a pause ends it', () => {
    const { press, timer, told } = openPage({ kind: 'pause', decimals: 2 });
    for (const key of '6.42') press(key);
    timer.pass(300);
    expect(told()).toEqual([]);
    timer.pass(50);
    expect(told()).toEqual([6.42]);
  });

  it('reports what the loss of focus tore', () => {
    const { page, press, told } = openPage();
    for (const key of '16') press(key);
    page.dispatchEvent(new Event('blur'));
    page.dispatchEvent(new Event('focus'));
    for (const key of '.4') press(key);
    expect(press('Enter')).toBe(true);
    expect(told()).toEqual(['cut-short', 'cut-short']);
  });

  it('takes or drops the number in progress at a tap, and learns an ending', () => {
    const { listener, press, timer, told } = openPage();
    for (const key of '6.42') press(key);
    expect(listener.state.text).toBe('6.42');
    listener.accept();
    for (const key of '6.5') press(key);
    listener.clear();
    listener.learn({ unit: 'mm', ending: { kind: 'pause', decimals: 1 } });
    for (const key of '7.1') press(key);
    timer.pass(400);
    expect(told()).toEqual([6.42, 7.1]);
  });

  it('hears nothing once stopped, and reports what was in progress', () => {
    const { press, stop, timer, told } = openPage();
    press('6');
    stop();
    expect(press('7')).toBe(false);
    timer.pass(60_000);
    expect(told()).toEqual(['cut-short']);
  });
});
