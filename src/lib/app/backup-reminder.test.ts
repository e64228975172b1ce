import { describe, expect, it } from 'vitest';
import { clearsUnusedSites, isBackupDue } from './backup-reminder.ts';

const NOW = Date.parse('2026-05-04T12:00:00Z');
const summary = { jobId: 'j', name: 'n', events: 500, lastAt: '2026-05-04T11:00:00Z' };

describe('isBackupDue', () => {
  it.each([
    [0, null, false],
    [299, null, false],
    [300, null, true],
    [1, '2026-05-04T11:00:00Z', false],
    [1, '2026-05-03T11:00:00Z', true],
    [0, '2026-01-01T00:00:00Z', false]
  ])('%i entries, last backup %s: %s', (unexported, exportedAt, due) => {
    expect(isBackupDue({ ...summary, unexported, exportedAt }, NOW)).toBe(due);
  });
});

describe('clearsUnusedSites', () => {
  it('is so for a browser of this vendor that is not installed', () => {
    expect(clearsUnusedSites('Apple Computer, Inc.', false)).toBe(true);
    expect(clearsUnusedSites('Apple Computer, Inc.', true)).toBe(false);
    expect(clearsUnusedSites('', false)).toBe(false);
  });
});
