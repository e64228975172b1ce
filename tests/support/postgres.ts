import { spawn, spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface TestPostgres {
  readonly url: string;
  stop(): Promise<void>;
}

/**
 * Starts a PostgreSQL of its own in a temporary folder, not as root; undefined where none is
 * installed. With REQUIRE_POSTGRES set, a missing one is a fault.
 */
export async function startPostgres(): Promise<TestPostgres | undefined> {
  const programs = findPrograms();
  if (!programs) {
    const said =
      'PostgreSQL is not installed (Debian: apt-get install postgresql), so the tests of the hub on PostgreSQL were not run.';
    if (process.env.REQUIRE_POSTGRES) throw new Error(said);
    process.stdout.write(`\n${said}\n`);
    return undefined;
  }
  const folder = mkdtempSync(join(tmpdir(), 'hub-pg-'));
  const owner = ownerFor(folder);
  const data = join(folder, 'data');
  const made = spawnSync(
    join(programs, 'initdb'),
    ['-D', data, '-U', 'hub', '-A', 'trust', '--no-sync', '--no-instructions', '-E', 'UTF8'],
    { ...owner, cwd: folder, encoding: 'utf8' }
  );
  if (made.status !== 0) throw new Error(`initdb: ${made.stderr}`);
  const port = await freePort();
  const server = spawn(
    join(programs, 'postgres'),
    ['-D', data, '-p', String(port), '-k', folder, '-c', 'listen_addresses=127.0.0.1'],
    { ...owner, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] }
  );
  let log = '';
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  await new Promise<void>((resolve, reject) => {
    server.stderr.setEncoding('utf8').on('data', (text: string) => {
      log += text;
      if (log.includes('ready to accept connections')) resolve();
    });
    server.once('exit', () => reject(new Error(`postgres ended: ${log}`)));
  });
  return {
    url: `postgres://hub@127.0.0.1:${port}/postgres`,
    async stop() {
      server.kill('SIGQUIT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    }
  };
}

function findPrograms(): string | undefined {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian)
    ? readdirSync(debian).sort((a, b) => Number(b) - Number(a))
    : [];
  const folders = [
    ...versions.map((version) => join(debian, version, 'bin')),
    ...(process.env.PATH ?? '').split(':')
  ];
  return folders.find(
    (folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres'))
  );
}

/** PostgreSQL refuses to run as root: another user then owns the folder and the processes. */
function ownerFor(folder: string): { uid?: number; gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string) => {
    const asked = spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' });
    return asked.status === 0 ? Number(asked.stdout) : 65_534;
  };
  const owner = { uid: id('-u'), gid: id('-g') };
  chownSync(folder, owner.uid, owner.gid);
  return owner;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('port'))
      );
    });
  });
}
