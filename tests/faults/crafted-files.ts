import { createHash } from 'node:crypto';
import type { SeedAct } from '../e2e/seed-job.ts';

const DEVICE = '01900000-0000-7000-8000-0000000000cc';

/** JSON with its keys in order, as a job file has it. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const fields = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${fields.map(([name, field]) => `${JSON.stringify(name)}:${canonical(field)}`).join(',')}}`;
}

/**
 * A job file made by hand, whole and with a true fingerprint, of acts a second apart: what somebody
 * with a text editor and patience can send.
 *
 * @param job the last digits of the job's id
 * @param startMs the clock of the first act, milliseconds since 1970
 */
export function craftedFile(
  job: number,
  name: string,
  acts: readonly SeedAct[],
  startMs = Date.UTC(2026, 1, 2, 8)
): string {
  const jobId = `01900000-0000-7000-8000-${String(job).padStart(12, '0')}`;
  const lines = acts.map(({ type, body, sorter = '' }, index) => {
    const at = startMs + index * 1000;
    const clock = at.toString(16).padStart(12, '0');
    const tail = String(index).padStart(12, '0');
    const id = `${clock.slice(0, 8)}-${clock.slice(8)}-7000-8000-${tail}`;
    const stamp = { id, jobId, deviceId: DEVICE, deviceSeq: index + 1 };
    const rest = { at: new Date(at).toISOString(), sorter, type, v: 1, body };
    return `${canonical({ ...stamp, ...rest })}\n`;
  });
  const text = lines.join('');
  const header = {
    format: 'evencourse-job',
    version: 1,
    jobId,
    name,
    events: lines.length,
    sha256: createHash('sha256').update(text).digest('hex'),
    devices: { [DEVICE]: lines.length },
    photos: 0
  };
  return `${JSON.stringify(header)}\n${text}`;
}

/** The address of the job that a crafted file holds. */
export function craftedAddress(job: number): string {
  return `/job/01900000-0000-7000-8000-${String(job).padStart(12, '0')}`;
}
