import type { Access } from './hub-store.ts';
import type { AccessEntry, InviteEntry, Role } from './protocol.ts';

/** A row of either database: whole numbers may come as numbers, big integers or texts. */
export type Row = Record<string, unknown>;

export function accessOfRow(row: Row): Access {
  return {
    id: String(row.id),
    space: String(row.space),
    device: String(row.device),
    role: String(row.role) as Access['role'],
    removed: Number(row.removed) !== 0,
    lastSeen: Number(row.last_seen)
  };
}

export function accessEntryOfRow(row: Row): AccessEntry {
  return {
    id: String(row.id),
    device: String(row.device),
    role: String(row.role) as Role,
    label: String(row.label),
    since: Number(row.since),
    lastSeen: Number(row.last_seen),
    removed: Number(row.removed) !== 0
  };
}

export function inviteEntryOfRow(row: Row, at: number): InviteEntry {
  return {
    id: String(row.id),
    role: String(row.role) as Role,
    since: Number(row.since),
    until: Number(row.until),
    state: inviteState(row, at)
  };
}

export function inviteState(row: Row, at: number): InviteEntry['state'] {
  if (row.used_by !== '') return 'used';
  if (Number(row.revoked) !== 0) return 'revoked';
  return Number(row.until) <= at ? 'expired' : 'open';
}
