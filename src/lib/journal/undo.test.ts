import { describe, expect, it } from 'vitest';
import { ViewDraft } from './draft.ts';
import { EMPTY_VIEW } from './fold.ts';
import { LONGEST_UNDO_CHAIN, findUndoFault, isVoided } from './undo.ts';

function draftOf(voidedBy: Record<string, string[]>): ViewDraft {
  const draft = new ViewDraft(EMPTY_VIEW);
  Object.assign(draft.part('voids').voidedBy, voidedBy);
  return draft;
}

describe('isVoided', () => {
  it.each([
    ['never named', {}, false],
    ['undone', { e: ['u'] }, true],
    ['undone, and the undo undone', { e: ['u'], u: ['v'] }, false],
    ['undone three deep', { e: ['u'], u: ['v'], v: ['w'] }, true],
    ['undone twice, one of them undone', { e: ['u', 'x'], u: ['v'] }, true],
    ['undone twice, both undone', { e: ['u', 'x'], u: ['v'], x: ['y'] }, false],
    [
      'undone twice, both undone, one of these undone',
      { e: ['u', 'x'], u: ['v'], x: ['y'], y: ['z'] },
      true
    ]
  ])('J8: an event %s', (_title, voidedBy, is) => {
    expect(isVoided(draftOf(voidedBy), 'e')).toBe(is);
  });

  it('J8: judges a chain of a hundred thousand undos', () => {
    const chain: Record<string, string[]> = { e: ['u1'] };
    for (let at = 1; at < 100_000; at++) chain[`u${at}`] = [`u${at + 1}`];
    expect(isVoided(draftOf(chain), 'e')).toBe(false);
    expect(isVoided(draftOf({ ...chain, u100000: ['last'] }), 'e')).toBe(true);
  });

  it('comes to an end in a circle', () => {
    expect(isVoided(draftOf({ e: ['u'], u: ['v'], v: ['u'] }), 'e')).toBeTypeOf('boolean');
    expect(isVoided(draftOf({ e: ['e'] }), 'e')).toBeTypeOf('boolean');
  });

  it('takes ids that name parts of JavaScript for ids', () => {
    expect(isVoided(draftOf({}), 'constructor')).toBe(false);
  });
});

describe('findUndoFault', () => {
  const chain = (length: number) =>
    new Map(Array.from({ length }, (_, at): [string, string] => [`u${at}`, `u${at + 1}`]));

  it.each([
    ['no undo', new Map<string, string>(), undefined],
    ['an undo of itself', new Map([['a', 'a']]), 'a'],
    ['a chain as long as may be', chain(LONGEST_UNDO_CHAIN), undefined],
    ['a chain one longer', chain(LONGEST_UNDO_CHAIN + 1), 'u0']
  ])('J15: %s', (_title, voids, fault) => {
    expect(findUndoFault(voids)).toBe(fault);
  });

  it('J15: finds a circle at the end of a chain, and two undos of one event are none', () => {
    expect(
      findUndoFault(
        new Map([
          ['a', 'b'],
          ['b', 'c'],
          ['c', 'b']
        ])
      )
    ).toBe('b');
    expect(
      findUndoFault(
        new Map([
          ['a', 'e'],
          ['b', 'e'],
          ['c', 'a']
        ])
      )
    ).toBeUndefined();
  });
});
