import type { SerialPortLike } from '$lib/gauge';

/** What is needed of the browser's list of ports. */
export interface SerialPorts {
  requestPort(): Promise<SerialPortLike>;
}

/** The browser's serial ports, or undefined where it has none. */
export function serialPorts(): SerialPorts | undefined {
  return (globalThis.navigator as { serial?: SerialPorts } | undefined)?.serial;
}
