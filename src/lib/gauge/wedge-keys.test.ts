import { describe, expect, it } from 'vitest';
import { type KeyPress, meaningOfKey } from './wedge-keys.ts';

const character = (press: KeyPress) => {
  const meaning = meaningOfKey(press);
  return meaning.kind === 'character' ? meaning.character : meaning.kind;
};

describe('meaningOfKey', () => {
  it.each([
    ['plain digit', { key: '6', code: 'Digit6' }, '6'],
    ['French digit row, gauge of another country', { key: '-', code: 'Digit6' }, '6'],
    ['French digit row, gauge of the country', { key: '6', code: 'Digit6', shiftKey: true }, '6'],
    ['Czech digit row', { key: 'ž', code: 'Digit6' }, '6'],
    ['dead key in the digit row', { key: 'Dead', code: 'Digit6' }, '6'],
    ['digit row moved by the layout', { key: '5', code: 'Digit6' }, '5'],
    ['numeric pad', { key: '6', code: 'Numpad6' }, '6'],
    ['numeric pad without Num Lock', { key: 'ArrowRight', code: 'Numpad6' }, '6'],
    ['pad decimal as a comma', { key: ',', code: 'NumpadDecimal' }, ','],
    ['pad decimal without Num Lock', { key: 'Delete', code: 'NumpadDecimal' }, '.'],
    ['French period place', { key: ':', code: 'Period' }, '.'],
    ['French comma place', { key: ';', code: 'Comma' }, ','],
    ['French comma', { key: ',', code: 'KeyM' }, ','],
    ['minus where the layout has a letter', { key: 'ß', code: 'Minus' }, '-'],
    ['inch mark', { key: '"', code: 'Digit2', shiftKey: true }, '"'],
    ['letter', { key: 'm', code: 'KeyM' }, 'm'],
    ['letter of an unknown keyboard', { key: 'm', code: '' }, 'm'],
    ['dead accent', { key: 'Dead', code: 'BracketLeft' }, '\uFFFD'],
    ['Android 229', { key: 'Unidentified', code: '' }, 'nothing'],
    ['input method', { key: 'Process', code: 'Digit6' }, 'nothing'],
    ['Shift alone', { key: 'Shift', code: 'ShiftLeft' }, 'nothing'],
    ['shortcut', { key: 'z', code: 'KeyZ', ctrlKey: true }, 'nothing'],
    ['Alt code on the pad', { key: '5', code: 'Numpad5', altKey: true }, 'nothing'],
    ['function key', { key: 'F5', code: 'F5' }, 'nothing'],
    ['held key', { key: '6', code: 'Digit6', repeat: true }, 'repeat'],
    ['Enter', { key: 'Enter', code: 'NumpadEnter' }, 'end'],
    ['Tab', { key: 'Tab', code: 'Tab' }, 'end'],
    ['Shift Tab walks back', { key: 'Tab', code: 'Tab', shiftKey: true }, 'nothing'],
    ['Backspace', { key: 'Backspace', code: 'Backspace' }, 'erase'],
    ['Escape', { key: 'Escape', code: 'Escape' }, 'cancel']
  ] as const)('%s', (_name, press, meaning) => {
    expect(character(press)).toBe(meaning);
  });
});
