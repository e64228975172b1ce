import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';

/**
 * Takes a lock that dies with its process, and says how to give it back. The database's own lock
 * is a folder that stays behind when the hub is killed.
 *
 * @throws Error when a living process holds it
 */
export function takePidLock(file: string): () => void {
  const mine = `${process.pid} ${startOf(process.pid)}\n`;
  for (let tries = 0; tries < 100; tries++) {
    if (create(file, mine)) return () => giveBack(file, mine);
    const theirs = read(file);
    if (theirs === undefined) continue; // given back meanwhile
    const [pid, start] = theirs.trim().split(' ');
    if (isAlive(Number(pid), start))
      throw new Error(
        `The hub runs already (process ${pid}). Stop that one first, or give this one a folder of its own with HUB_DATA.`
      );
    takeAway(file, theirs);
  }
  throw new Error(`${file} could not be taken; delete it if no hub runs.`);
}

/** Creates the file whole or not at all: written under a name of its own, then linked. */
function create(file: string, text: string): boolean {
  const own = `${file}.${process.pid}`;
  writeFileSync(own, text);
  try {
    linkSync(own, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(own, { force: true });
  }
}

/** Takes a dead process's file away, and puts it back if it was a living one's after all. */
function takeAway(file: string, dead: string): void {
  const aside = `${file}.${process.pid}.old`;
  try {
    renameSync(file, aside);
  } catch {
    return; // another was faster
  }
  if (read(aside) !== dead) {
    try {
      linkSync(aside, file);
    } catch {
      // A third has taken it since; its holder is told when it looks.
    }
  }
  rmSync(aside, { force: true });
}

function giveBack(file: string, mine: string): void {
  if (read(file) === mine) rmSync(file, { force: true });
}

function read(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

function isAlive(pid: number, start: string): boolean {
  if (!Number.isSafeInteger(pid) || pid < 1 || pid === process.pid) return false;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  // A number is soon given to another process, in a container after each start.
  return start === startOf(pid);
}

/** When a process began, by the system's count; `-` where the system does not say. */
function startOf(pid: number): string {
  const stat = read(`/proc/${pid}/stat`);
  return stat?.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '-';
}
