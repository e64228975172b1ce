import { describe, expect, it } from 'vitest';
import { NumberWords } from '$lib/text';
import { sort } from '$lib/text/en/sort.ts';
import { sayPace } from './pace-words.ts';

const numbers = new NumberWords('en');

describe('sayPace', () => {
  it('tells no time to finish before there is a pace, nor when nothing is left', () => {
    expect(sayPace({ minutes: 3, perHour: null, left: 900 }, sort, numbers)).toEqual({
      worked: '3 min',
      pace: 'Pace shows after five minutes',
      toFinish: '',
      left: '900 slates left on the pallets'
    });
    expect(sayPace({ minutes: 61, perHour: 400, left: 0 }, sort, numbers)).toMatchObject({
      worked: '1 h 1 min',
      toFinish: ''
    });
  });

  it('says nothing of what is left where the count of a pallet is unknown', () => {
    const unknown = { minutes: 61, perHour: 400, left: undefined };
    expect(sayPace(unknown, sort, numbers)).toMatchObject({ toFinish: '', left: '' });
  });

  it('tells hours and minutes to the last slate: 1,000 slates at 400 an hour are 2 h 30 min', () => {
    expect(sayPace({ minutes: 59.6, perHour: 400, left: 1000 }, sort, numbers)).toMatchObject({
      worked: '1 h 0 min',
      pace: '400 slates an hour',
      toFinish: 'about 2 h 30 min to finish'
    });
  });
});
