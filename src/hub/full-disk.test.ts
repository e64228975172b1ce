import fs from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { AskedHub, FINCH, KEEPER, MEMBER, SPACE, WREN, key } from '../../tests/support/hub-kit.ts';

const { writeSync } = fs;
/** Every write on this machine ends so until the test is over. */
function failWith(code: string): void {
  fs.writeSync = () => {
    throw Object.assign(new Error(`${code}: write`), { code });
  };
}

let desk: AskedHub;
beforeEach(async () => {
  desk = await new AskedHub().start();
  await desk.crew();
});
afterEach(async () => {
  fs.writeSync = writeSync;
  await desk.end();
});

describe('the disk of the hub', () => {
  it.each(['ENOSPC', 'EDQUOT'])(
    'that is full (%s) takes nothing, gives what it has, and goes on once there is room',
    async (code) => {
      expect((await desk.push(MEMBER, FINCH, 1, 2)).value).toEqual({ last: 2 });
      failWith(code);
      expect((await desk.push(MEMBER, FINCH, 3, 3)).told).toBe('507 hub-full');
      const photo = `/${SPACE}/photo/${key(32, 1)}`;
      expect((await desk.ask('PUT', photo, MEMBER, new Uint8Array(9))).told).toBe('507 hub-full');
      const many = await Promise.all([
        desk.push(MEMBER, FINCH, 3, 3),
        desk.push(KEEPER, WREN, 1, 1)
      ]);
      expect(many.map(({ told }) => told)).toEqual(['507 hub-full', '507 hub-full']);
      // Late enough for the hub to note that he was seen, for which there is no room either.
      desk.time += 60_000;
      expect((await desk.pull(KEEPER))?.heads).toEqual({ [FINCH]: 2 });
      expect(desk.faults).toEqual([]);
      fs.writeSync = writeSync;
      expect((await desk.push(MEMBER, FINCH, 3, 3)).value).toEqual({ last: 3 });
      const pulled = await desk.pull(KEEPER);
      expect(pulled?.parcels.map(({ first, last }) => [first, last])).toEqual([
        [1, 2],
        [3, 3]
      ]);
    }
  );

  it('that is broken is not called full: whoever runs the hub is told', async () => {
    failWith('EIO');
    expect((await desk.push(MEMBER, FINCH, 1, 2)).told).toBe('500 hub-failed');
    expect(String(desk.faults[0])).toContain('disk I/O error');
    fs.writeSync = writeSync;
    expect((await desk.push(MEMBER, FINCH, 1, 2)).value).toEqual({ last: 2 });
  });
});
