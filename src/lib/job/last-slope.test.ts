import { describe, expect, it } from 'vitest';
import type { NewEvent, StoredEvent } from '$lib/journal';
import { lastSlope } from './last-slope.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const course = (slopeId: string, number: number): NewEvent => ({
  type: 'courseLaid',
  body: { slopeId, course: number, piles: [{ pile: 1, pieces: 20 }] }
});
const part: NewEvent = {
  type: 'coursePartLaid',
  body: { slopeId: 'porch', course: 1, from: 'left', piles: [{ pile: 1, pieces: 4 }] }
};
const by = (deviceId: string, place: number): StoredEvent =>
  ({ id: Journal.id(place), deviceId }) as StoredEvent;

describe('lastSlope', () => {
  it('is nothing before a course, then that of the newest, whole or in part', () => {
    expect(lastSlope(new Journal().view, [], 'me')).toBeUndefined();
    expect(lastSlope(new Journal().add(course('south', 1), course('north', 1)).view, [], '')).toBe(
      'north'
    );
    expect(lastSlope(new Journal().add(course('south', 1), part).view, [], '')).toBe('porch');
  });

  it('is this device’s own while a mate lays another slope, and not one taken back', () => {
    const journal = new Journal().add(course('south', 1), course('north', 1), course('north', 2));
    const newest = [by('mate', 2), by('mate', 1), by('me', 0)];
    expect(lastSlope(journal.view, newest, 'me')).toBe('south');
    journal.add({ type: 'entryVoided', body: { voids: Journal.id(0) } });
    expect(lastSlope(journal.view, newest, 'me')).toBe('north');
  });
});
