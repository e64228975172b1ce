/**
 * A value that is set now and again, with everything it was set to before, so that an undo of the
 * last setting brings back the one before. In the order of the ids of the events that set it, which
 * is the order of acts on a device.
 */
export interface Setting<T> {
  readonly id: string;
  readonly at: string;
  readonly value: T;
}
export type Register<T> = Setting<T>[];

/** The value now, or undefined when it was never set or every setting was undone. */
export function current<T>(register: Register<T> | undefined): T | undefined {
  return register?.at(-1)?.value;
}

/** Adds a setting in its place; setting the same id twice changes nothing. Modifies the register. */
export function addSetting<T>(register: Register<T>, setting: Setting<T>): void {
  let place = register.length;
  while (place > 0 && register[place - 1].id > setting.id) place--;
  if (register[place - 1]?.id !== setting.id) register.splice(place, 0, setting);
}

/** Takes a setting out, as if it had never been made. Modifies the register. */
export function removeSetting<T>(register: Register<T>, id: string): void {
  const place = register.findIndex((setting) => setting.id === id);
  if (place >= 0) register.splice(place, 1);
}
