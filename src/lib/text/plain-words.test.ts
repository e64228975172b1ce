import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/**
 * Words that no builder says, each with what to write instead. Where a word has another, plain
 * sense ("told apart", "the file tells"), only the forms meant here are refused.
 */
const REFUSED: readonly (readonly [pattern: RegExp, instead: string])[] = [
  [/\bforetold|\bforetells?\b|\bforetelling\b/i, 'expected, estimated'],
  [/\btold by (?:hand|eye)|\b(?:slate|slates|which) told\b/i, 'sorted by eye'],
  [/\banew\b/i, 'again'],
  [/\bmend(?:s|ed|ing)?\b/i, 'fix'],
  [/\breckon(?:s|ed|ing)?\b/i, 'allow for'],
  [/\bstray(?:s|ed|ing)?\b/i, 'be off by'],
  [/\bplans? in force\b/i, 'current plan'],
  [/\badopt(?:s|ed|ing)?\b/i, 'use this plan'],
  [/\bjudges? nothing\b/i, 'not used for the verdict'],
  [/\bspeaks? (?:for|against)\b/i, 'reason to refuse'],
  [/\bsure \d+ times in\b/i, '95 % confidence'],
  [/\bby the book\b|\bthe book (?:holds|says)\b/i, 'we think'],
  [/\bnatural breaks?\b/i, 'split at the gaps'],
  [/\bto suit the roof\b/i, 'best for this roof'],
  [/\bequal shares?\b/i, 'same number in each'],
  [/\bkick allowances?\b/i, 'biggest step you accept between neighbours'],
  [/\bexpected kickers\b|\bkickers per 100\b/i, 'joints that will show, in 100'],
  [/\bsaved without a pile\b/i, 'saved; put it back on its pallet'],
  [/\bgauged before there were grades\b|\bon no pile\b/i, 'sample slates measured'],
  [/\btaken whole\b|\bwhole or not at all\b/i, 'one bad line and nothing is loaded'],
  [/\bas soon as every field\b|\bevery field stands\b/i, 'fill every box to see the figures'],
  [/: this is proved\b|\bnone has fewer expected\b/i, 'best fit for your slates'],
  [/\blaid on paper\b|\bdealt at random\b/i, 'computer test of the plan'],
  [/\bvariance lies between\b/i, 'the pallets differ: take from all of them'],
  [/\btaps count for piles\b|\bnot for millimetres\b/i, 'measure a few sorted slates'],
  [/, for no\b/i, 'say it without "for"'],
  [/\bbeyond (?:the|its|their) reserves?\b/i, 'with the reserve kept back'],
  [/\bunlike (?:piles|courses)\b/i, 'different'],
  [/\bgives? way to\b/i, 'ends where the next begins'],
  [/\brebuilds?\b|\bworks? (?:\w+ ){0,5}out anew\b/i, 'recalculate from the saved entries']
];

/** A sentence of before, refused by each row in the order above: the test must catch them all. */
const BEFORE = [
  'Kickers per 100 joints, foretold: 12 unsorted.',
  'of these, told by hand',
  'Jobs to be folded anew',
  'The file needs mending:',
  'Slates on a wrong pile are reckoned with.',
  'The hand is assumed to stray by 0.5 mm.',
  'Plan in force',
  'Adopt this plan',
  'Listed apart: these judge nothing',
  'speaks for refusing',
  'between 48 and 413 of the 4,200 slates, sure 95 times in 100',
  'By the book 310 of 2 Medium are left.',
  'Natural breaks',
  'To suit the roof',
  'Equal shares',
  'Kick allowance',
  'Expected kickers per 100 joints',
  'Saved without a pile: grades come next.',
  'Gauged before there were grades, on no pile',
  'Taken whole or not at all.',
  'The figures appear as soon as every field stands.',
  'None has fewer expected kickers: this is proved.',
  'Laid on paper again and again with slates dealt at random.',
  'The variance lies between pallets (intraclass correlation).',
  'Taps count for piles and not for millimetres.',
  'Same number, for no boundary moves more than 0.2 mm from where it was.',
  'The roof needs 12 slates more than all piles hold beyond their reserve.',
  'Course 4 of End and 4 of Front take unlike piles.',
  'Where Thick gives way to Medium',
  'Rebuild works every figure of a job out anew from its entries.'
];

const FOLDER = new URL('./en/', import.meta.url);

/** What a text says: its lines, without comments, imports and the names of its words. */
function saidIn(file: string): { line: number; said: string }[] {
  const source = readFileSync(new URL(file, FOLDER), 'utf8').replace(/\/\*[^]*?\*\//g, (comment) =>
    comment.replace(/[^\n]/g, ' ')
  );
  return source.split('\n').flatMap((text, index) => {
    const quoted = [
      ...text.matchAll(/'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)"|`((?:[^`\\]|\\.)*)`?/g)
    ];
    const isKeyOrPath = (word: string): boolean =>
      /^[\w./-]*$/.test(word) && !/^[A-Z][a-z]+$/.test(word);
    return quoted
      .map(([, one, two, three]) => one ?? two ?? three ?? '')
      .filter((word) => !isKeyOrPath(word))
      .map((said) => ({ line: index + 1, said }));
  });
}

describe('the English words', () => {
  const files = readdirSync(FOLDER).filter((file) => file.endsWith('.ts'));

  it.each(
    REFUSED.map(([pattern, instead], index) => ({ pattern, instead, before: BEFORE[index] }))
  )('refuse $pattern', ({ pattern, before }) => expect(before).toMatch(pattern));

  it.each(files)('say it in plain words: %s', (file) => {
    const words = saidIn(file);
    const found = words.flatMap(({ line, said }) =>
      REFUSED.filter(([pattern]) => pattern.test(said)).map(
        ([pattern, instead]) =>
          `${file}:${line}: “${said}”: not ${String(pattern)}, but: ${instead}`
      )
    );
    expect(found).toEqual([]);
  });

  it('are read whole', () => {
    const all = files.flatMap(saidIn);
    expect(all.length).toBeGreaterThan(1500);
    expect(all.map(({ said }) => said)).toContain('Name of the job');
  });
});
