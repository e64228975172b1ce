import { MM_PER_INCH, formatFeetInches } from '$lib/engine';
import { parseLength } from '$lib/engine/roof';
import type { NumberWords } from '$lib/text';

/** The unit a job shows lengths in: millimetres, or feet and inches. */
export type ShownUnit = 'mm' | 'ftIn';

/** Writes a length in the job's unit; decimals count for millimetres only. */
export type LengthWriter = (lengthMm: number, decimals?: number) => string;

/** Writer of lengths as a reader sees them: 5,500 mm, or 18′ 0 9/16″ to the nearest sixteenth. */
export function lengthWriter(unit: ShownUnit, numbers: NumberWords): LengthWriter {
  return (lengthMm, decimals = 0) => {
    if (unit === 'mm') return numbers.mm(lengthMm, decimals);
    return lengthMm < 0 ? `−${formatFeetInches(-lengthMm)}` : formatFeetInches(lengthMm);
  };
}

/** Long runs and areas in the job's unit, as numbers and with the names of their units. */
export interface RunUnits {
  readonly unit: 'm' | 'ft';
  readonly areaUnit: 'm²' | 'ft²';
  readonly run: (metres: number) => number;
  readonly area: (squareMetres: number) => number;
}

const METRES_PER_FOOT = (12 * MM_PER_INCH) / 1000;

/** Metres and square metres, or feet and square feet of the international foot. */
export function runUnits(unit: ShownUnit): RunUnits {
  if (unit === 'mm') return { unit: 'm', areaUnit: 'm²', run: (m) => m, area: (m2) => m2 };
  return {
    unit: 'ft',
    areaUnit: 'ft²',
    run: (metres) => metres / METRES_PER_FOOT,
    area: (squareMetres) => squareMetres / METRES_PER_FOOT ** 2
  };
}

/** Lengths closer than this are written alike, mm. */
const SAME_MM = 0.005;

/**
 * A length as it stands in a field, so that reading it back gives the same length: `2603.5` in
 * millimetres; a whole number of sixteenths as `8′ 6 1/2″`, anything else as `500 mm`.
 */
export function fieldText(lengthMm: number, unit: ShownUnit): string {
  const plain = String(Number(lengthMm.toFixed(4)));
  if (unit === 'mm') return plain;
  const taped = lengthMm >= 0 ? formatFeetInches(lengthMm) : plain;
  const back = parseLength(taped, 'in');
  return back.ok && Math.abs(back.lengthMm - lengthMm) < SAME_MM ? taped : `${plain} mm`;
}

/** What stands in a field: a number, or why there is none and what was probably meant. */
export type FieldReading =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      readonly reason: 'empty' | 'ambiguous' | 'not-a-length' | 'not-a-number';
      readonly nearest?: number;
    };

/** Reads a field that holds a length, to a millionth of a millimetre. A minus sign gives a negative length for the engine to refuse. */
export function readLength(text: string, unit: ShownUnit): FieldReading {
  const bareUnit = unit === 'mm' ? 'mm' : 'in';
  const read = parseLength(text, bareUnit);
  if (read.ok) return { ok: true, value: Number(read.lengthMm.toFixed(6)) };
  switch (read.reason) {
    case 'negative': {
      const unsigned = readLength(text.replace(/[-−–]/, ''), unit);
      return unsigned.ok ? { ok: true, value: -unsigned.value } : unsigned;
    }
    case 'ambiguous': {
      const nearest = Number(text.replace(/[^\d]/g, ''));
      return { ok: false, reason: 'ambiguous', nearest };
    }
    default:
      return { ok: false, reason: read.reason };
  }
}

/** Reads a field that holds a plain number, such as a pitch: 35, 22,5, 22.5°. */
export function readNumber(text: string): FieldReading {
  const plain = text.trim().replace(/[°]$/, '').replace(',', '.').replace('−', '-').trim();
  if (plain === '') return { ok: false, reason: 'empty' };
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(plain)) return { ok: false, reason: 'not-a-number' };
  return { ok: true, value: Number(plain) };
}

/** The same length in another unit; text that is no length stays as it was typed. */
export function retypeLength(text: string, from: ShownUnit, to: ShownUnit): string {
  if (from === to) return text;
  const read = readLength(text, from);
  return read.ok && read.value >= 0 ? fieldText(read.value, to) : text;
}
