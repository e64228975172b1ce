import { MOST_POINTS } from '$lib/engine/thickness';
import type { CsvProblem, CsvReadAs } from './csv-types.ts';

/** What a column of a file of readings holds. */
export type Column =
  | 'pallet'
  | 'thickness'
  | 'point'
  | 'points'
  | 'grade'
  | 'setAside'
  | 'list'
  | 'layer'
  | 'place'
  | 'ring'
  | 'faults'
  | 'length'
  | 'width'
  | 'outOfSquare'
  | 'edgeBow'
  | 'flatness'
  | 'rocks'
  | 'sample';

/** A column of a file: where it stands, and the unit that its heading states. */
export interface ColumnPlace {
  readonly at: number;
  readonly unit?: CsvUnit;
}
export type CsvUnit = 'mm' | 'inch';

/** Where each column stands. Only points of a slate may have several. */
export type Places = ReadonlyMap<Column, readonly ColumnPlace[]>;

/** The heading that the export writes; a column for each point is read and never written. */
export const HEADING: Readonly<Record<Exclude<Column, 'point'>, string>> = {
  pallet: 'pallet',
  thickness: 'thickness_mm',
  points: 'points_mm',
  grade: 'grade',
  setAside: 'set_aside',
  list: 'sample_list',
  layer: 'layer',
  place: 'place',
  ring: 'ring',
  faults: 'faults',
  length: 'length_mm',
  width: 'width_mm',
  outOfSquare: 'out_of_square_mm',
  edgeBow: 'edge_bow_mm',
  flatness: 'flatness_mm',
  rocks: 'rocks',
  sample: 'sample'
};
type NamedColumn = keyof typeof HEADING;
const NAMED = Object.keys(HEADING) as NamedColumn[];
/** Headings that people write instead, without case, spaces, signs and unit. */
const OTHER_NAMES: Partial<Record<NamedColumn, readonly string[]>> = {
  pallet: [
    ...['palletno', 'palletnr', 'palletnum', 'palletnumber', 'palletid', 'palletname', 'pallets'],
    ...['palletlabel', 'plt', 'pltno', 'pal', 'palno', 'crate', 'crateno', 'cratenumber']
  ],
  thickness: [
    ...['th', 'thk', 'thick', 'thickn', 't', 'meanthickness', 'thicknessmean', 'avgthickness'],
    ...['averagethickness', 'slatethickness', 'mean', 'average', 'avg', 'reading', 'measured'],
    ...['measurement', 'calliper', 'caliper']
  ],
  points: ['thicknesspoints'],
  grade: ['grades', 'class', 'thicknessgrade', 'thicknessclass', 'sorted', 'sortedas'],
  setAside: ['setasideas'],
  layer: ['layerno', 'layernumber', 'tier'],
  place: ['placeinlayer', 'slate', 'slateno', 'slatenumber', 'position', 'pos'],
  ring: ['rings', 'sound', 'ringing'],
  faults: ['fault', 'defects', 'defect'],
  length: ['len', 'slatelength'],
  width: ['slatewidth'],
  outOfSquare: ['squareness'],
  edgeBow: ['edge', 'edgestraightness'],
  flatness: ['bow']
};
/** Columns whose number may be in mm or in inches; any other has no unit. */
const LENGTHS: readonly Column[] = [
  ...(['thickness', 'point', 'points', 'length', 'width'] as const),
  ...(['outOfSquare', 'edgeBow', 'flatness'] as const)
];
/** Columns that hold the thickness, and must be in a unit that is read. */
const THICKNESSES: readonly Column[] = ['thickness', 'point', 'points'];
/** Point 1, P2, thickness 3, left, right, middle. */
const POINT =
  /^(?:(?:thickness)?(?:point|pt|p|th|t|thk|thick|thickness|reading|measurement)(?:no)?\d{1,2}|(?:thickness)?(?:left|right|middle|mid|centre|center))$/;
const UNIT =
  /(?:^|[\s_([,./-])(mm|millimet(?:re|er)s?|in|ins|inch|inches|cm|[µu]m|microns?|thou|mils?)[\s)\].]*$|(["″”])[\s)\].]*$/iu;

/** What one heading says. */
interface Meaning {
  readonly column: Column;
  /** Whether it is the heading that the export writes. */
  readonly isOwn: boolean;
  readonly unit?: CsvUnit | 'other';
}

const headingOf = (column: Column): string => HEADING[column === 'point' ? 'points' : column];
const isOwnHeading = (heading: string, column: Column): boolean =>
  column !== 'point' && withoutMm(plain(heading)) === withoutMm(plain(HEADING[column]));

function meaningOf(heading: string): Meaning | undefined {
  const text = heading.trim();
  const [stated, word, sign] = UNIT.exec(text) ?? [];
  const bare = plain(text);
  const named = stated === undefined ? bare : plain(text.slice(0, -stated.length));
  const unit = stated === undefined ? undefined : unitOf(word ?? sign);
  // "Thickness in mm" leaves an "in" behind, and "thicknessmm" hides its unit.
  const tries: readonly (readonly [string, Meaning['unit']])[] = [
    [named, unit],
    ...(unit === 'mm' ? [[named.replace(/in$/, ''), unit] as const] : []),
    ...(unit === undefined && bare.endsWith('mm') ? [[bare.slice(0, -2), 'mm'] as const] : []),
    [bare, undefined]
  ];
  for (const [name, found] of tries) {
    const column = columnNamed(name, found !== undefined);
    if (column && (found === undefined || LENGTHS.includes(column)))
      return {
        column,
        isOwn: isOwnHeading(heading, column),
        ...(found !== undefined && { unit: found })
      };
  }
  return undefined;
}

function columnNamed(name: string, hasUnit: boolean): Column | undefined {
  // A heading that is a unit and no more heads the thickness.
  if (name === '') return hasUnit ? 'thickness' : undefined;
  if (POINT.test(name)) return 'point';
  return NAMED.find(
    (column) => name === withoutMm(plain(HEADING[column])) || OTHER_NAMES[column]?.includes(name)
  );
}

function unitOf(word: string): CsvUnit | 'other' {
  if (/^(mm|millimet)/i.test(word)) return 'mm';
  return /^(in|["″”])/i.test(word) ? 'inch' : 'other';
}

/** A heading without case, spaces and signs. */
function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

function withoutMm(name: string): string {
  return name.replace(/mm$/, '');
}

/** Whether headings hold the columns without which a file says nothing. */
export function hasColumns(headings: readonly string[]): boolean {
  return missingColumns(headings).length === 0;
}

/** How many of the headings are known. */
export function knownColumns(headings: readonly string[]): number {
  return headings.filter((heading) => meaningOf(heading)).length;
}

/** What a file lacks: a pallet, or else anything that tells a slate's thickness. */
export function missingColumns(headings: readonly string[]): CsvProblem[] {
  const found = headings.map((heading) => meaningOf(heading)?.column);
  const has = (...wanted: Column[]): boolean => wanted.some((column) => found.includes(column));
  const missing: CsvProblem[] = [];
  if (!has('pallet')) missing.push({ code: 'missing-column', column: 'pallet', found: headings });
  const isPile = headings.some((heading) => plain(heading) === 'pile');
  if (!has('thickness', 'point', 'points', 'grade') && !isPile)
    missing.push({ code: 'missing-column', column: 'thickness_mm or grade', found: headings });
  return missing;
}

export type HeadingsResult =
  | {
      readonly ok: true;
      readonly places: Places;
      readonly ignored: readonly string[];
      readonly headings: CsvReadAs['headings'];
    }
  | { readonly ok: false; readonly problems: readonly CsvProblem[] };

/**
 * Finds what each column of a file holds by its heading, in any case and spacing, with or without a
 * unit. The heading of the export wins over one that people write; the other is then left alone. A
 * slate's number without a layer is a running number and no place; a pile counts as the grade where
 * nothing else tells one.
 */
export function readHeadings(headings: readonly string[]): HeadingsResult {
  const refuse = (...problems: CsvProblem[]): HeadingsResult => ({ ok: false, problems });
  const meanings = headings.map(meaningOf);
  const found = new Map<Column, { at: number; meaning: Meaning }[]>();
  for (const [at, meaning] of meanings.entries())
    if (meaning) found.set(meaning.column, [...(found.get(meaning.column) ?? []), { at, meaning }]);

  const places = new Map<Column, readonly ColumnPlace[]>();
  for (const [column, all] of found) {
    const own = all.filter(({ meaning }) => meaning.isOwn);
    const taken = column === 'point' || own.length === 0 ? all : own;
    if (column !== 'point' && taken.length > 1)
      return refuse({ code: 'duplicate-column', column: headings[taken[0].at] });
    if (column === 'point' && taken.length > MOST_POINTS)
      return refuse({ code: 'too-many-point-columns', found: taken.length });
    const strange = taken.find(({ meaning }) => meaning.unit === 'other');
    if (strange && THICKNESSES.includes(column))
      return refuse({ code: 'unknown-unit', column: headings[strange.at] });
    if (strange) continue;
    places.set(
      column,
      taken.map(({ at, meaning: { unit } }) => ({
        at,
        ...(unit !== undefined && unit !== 'other' && { unit })
      }))
    );
  }
  if (!places.has('layer')) places.delete('place');
  const isTold = (['thickness', 'point', 'points', 'grade'] as const).some((one) =>
    places.has(one)
  );
  const pile = headings.findIndex((heading) => plain(heading) === 'pile');
  if (!isTold && pile >= 0) places.set('grade', [{ at: pile }]);

  const columnAt = new Map<number, Column>();
  for (const [column, all] of places) for (const { at } of all) columnAt.set(at, column);
  return {
    ok: true,
    places,
    ignored: headings.filter((heading, at) => heading !== '' && !columnAt.has(at)),
    headings: headings.flatMap((heading, at) => {
      const column = columnAt.get(at);
      return column === undefined || isOwnHeading(heading, column)
        ? []
        : [{ heading, column: headingOf(column) }];
    })
  };
}
