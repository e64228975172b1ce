import { MM_PER_INCH } from '$lib/engine';
import type { words } from '$lib/text';
import { type LengthWriter, type ShownUnit, fieldText } from '$lib/ui';
import type { FieldTrouble } from './roof-reading.ts';

/** What is wrong with a field, in words, and the value that would mend it. */
export interface ToldTrouble {
  readonly sentence: string;
  /** The nearest value that works: for a button, and as it is typed into the field. */
  readonly mend?: { readonly label: string; readonly text: string };
}

/** Words for a trouble of a slate's or a slope's field. */
export function sayRoofTrouble(
  trouble: FieldTrouble,
  text: typeof words.text.roof,
  write: LengthWriter,
  unit: ShownUnit
): ToldTrouble {
  const { field, code, value, limit } = trouble;
  const metresMm = meantAsMetres(trouble, unit);
  if (metresMm !== undefined)
    return {
      sentence: text.trouble.inMetres(String(value)),
      mend: { label: text.use(write(metresMm, 0)), text: fieldText(metresMm, unit) }
    };
  const nearest = nearestOnTape(trouble, unit);
  const say = (number: number | undefined) =>
    number === undefined ? '' : sayValue(field, number, write);
  const sentences = text.trouble;
  const isBelowZero = value !== null && value < 0 && (nearest ?? limit ?? -1) >= 0;
  const sentence = sentenceOf(isBelowZero ? 'negative' : code, sentences, say(nearest ?? limit));
  if (nearest === undefined) return { sentence };
  return {
    sentence,
    mend: {
      label: text.use(say(nearest)),
      text: isLength(field) ? fieldText(nearest, unit) : String(nearest)
    }
  };
}

/** Fields of metres rather than millimetres, and the most that is taken for metres typed there. Ours. */
const MEASURES_OF_ROOF = ['rafterLengthMm', 'eaveWidthMm'];
const MOST_METRES = 30;

/** What a number too small for millimetres comes to as metres; undefined where that is no answer. */
function meantAsMetres(
  { field, value, nearest }: FieldTrouble,
  unit: ShownUnit
): number | undefined {
  if (unit !== 'mm' || !MEASURES_OF_ROOF.includes(field)) return undefined;
  if (value === null || nearest === undefined || value < 1 || value > MOST_METRES) return undefined;
  return value * 1000 >= nearest ? Math.round(value * 1000) : undefined;
}

type Sentences = (typeof words)['text']['roof']['trouble'];

function sentenceOf(code: keyof Sentences, sentences: Sentences, limit: string): string {
  const sentence = sentences[code];
  return typeof sentence === 'string' ? sentence : sentence(limit);
}

/** The nearest value, in feet and inches moved on to a whole sixteenth on the side that works. */
function nearestOnTape({ field, value, nearest }: FieldTrouble, unit: ShownUnit) {
  if (nearest === undefined || unit === 'mm' || !isLength(field)) return nearest;
  const sixteenths = (nearest / MM_PER_INCH) * 16;
  const whole = value !== null && nearest < value ? Math.floor(sixteenths) : Math.ceil(sixteenths);
  return (whole / 16) * MM_PER_INCH;
}

function sayValue(field: string, value: number, write: LengthWriter): string {
  if (field === 'densityKgPerM3') return `${value} kg/m³`;
  if (!isLength(field)) return `${Number(value.toFixed(1))}°`;
  return write(value, Number.isInteger(value) ? 0 : 1);
}

function isLength(field: string): boolean {
  return field.endsWith('Mm');
}
