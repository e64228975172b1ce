import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

/** The app beside a hub, in a process of its own. */
export interface HubProcess {
  readonly url: string;
  /** The hub key, which lets a device open spaces. */
  readonly key: string;
  readonly keyLink: string;
  /** Memory that the process holds now, MB. */
  memoryMb(): Promise<number>;
  end(): Promise<void>;
}

export async function hubProcess(): Promise<HubProcess> {
  const script = `${process.cwd()}/tests/bench/hub-server.js`;
  const child = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const read = async (): Promise<string> => {
    const { done, value } = await lines.next();
    if (done) throw new Error('the hub ended by itself');
    return value;
  };
  const told = JSON.parse(await read()) as Pick<HubProcess, 'url' | 'key' | 'keyLink'>;
  return {
    ...told,
    async memoryMb() {
      child.stdin.write('memory\n');
      return Number(await read());
    },
    end: () =>
      new Promise((resolve) => {
        child.once('close', () => resolve());
        child.stdin.end();
      })
  };
}
