import { beforeAll, describe, expect, it } from 'vitest';
import { common } from './en/common.ts';
import { crew } from './en/crew.ts';
import { photos } from './en/photos.ts';
import { quick } from './en/quick.ts';
import { sort } from './en/sort.ts';
import { sortCount } from './en/sort-count.ts';
import { sortOptions } from './en/sort-options.ts';
import { tags } from './en/tags.ts';
import { es } from './es/index.ts';
import { fr } from './fr/index.ts';
import { pl } from './pl/index.ts';
import { ro } from './ro/index.ts';
import { NumberWords } from './numbers.ts';
import { words } from './words.svelte.ts';

const en = { common, crew, photos, quick, sort, sortCount, sortOptions, tags };
const TRANSLATIONS = { es, fr, pl, ro };
const WHOLE = ['sort', 'sortCount', 'sortOptions', 'tags', 'quick', 'photos', 'common'] as const;
const SECTIONS = [...WHOLE, 'crew'] as const;

/** Every word of a section by its path. */
function pathsOf(section: object, path = ''): Map<string, unknown> {
  return new Map(
    Object.entries(section).flatMap(([name, value]): [string, unknown][] =>
      typeof value === 'object' && value !== null
        ? [...pathsOf(value as object, `${path}${name}.`)]
        : [[path + name, value]]
    )
  );
}

describe.each(Object.entries(TRANSLATIONS))('the words in %s', (_locale, translation) => {
  it.each(WHOLE)('has every word of %s, and none besides', (section) => {
    expect([...pathsOf(translation[section] ?? {}).keys()].sort()).toEqual(
      [...pathsOf(en[section]).keys()].sort()
    );
  });

  it('has no word of the crew besides those of English', () => {
    const english = pathsOf(crew);
    const words = [...pathsOf(translation.crew ?? {}).keys()];
    expect(words.filter((path) => !english.has(path))).toEqual([]);
    expect(words.length).toBeGreaterThan(0.6 * english.size);
  });

  it.each(SECTIONS)('has no empty or English sentence in %s', (section) => {
    const english = pathsOf(en[section]);
    for (const [path, word] of pathsOf(translation[section] ?? {})) {
      if (typeof word !== 'string') continue;
      expect(word.trim(), path).not.toBe('');
      if (word.includes(' ')) expect(word, path).not.toBe(english.get(path));
    }
  });

  it('speaks of 0, 1, 2, 5 and 22 slates without a hole', () => {
    for (const n of [0, 1, 2, 5, 22]) {
      const said = translation.common?.slates?.(n) ?? '';
      expect(said).toContain(String(n));
      expect(said).not.toMatch(/undefined|NaN/);
    }
  });
});

describe('plural forms by CLDR', () => {
  it('Polish: 1 płytka, 2 płytki, 5 płytek, 22 płytki', () => {
    const said = [1, 2, 5, 22].map((n) => pl.common?.slates?.(n));
    expect(said).toEqual(['1 płytka', '2 płytki', '5 płytek', '22 płytki']);
  });

  it('Romanian: 1 placă, 2 plăci, 20 de plăci', () => {
    expect([1, 2, 20].map((n) => ro.common?.slates?.(n))).toEqual([
      '1 placă',
      '2 plăci',
      '20 de plăci'
    ]);
  });
});

describe('words', () => {
  beforeAll(() => words.load('sort', 'jobs'));

  it('change language, keep English where a section is missing, and write numbers its way', async () => {
    expect(words.text.sort.title).toBe(en.sort.title);
    expect(await words.use('fr')).toBe(true);
    expect(words.text.sort.title).toBe('Trier');
    expect(words.text.jobs.title).toBe('Jobs');
    expect(words.numbers.mm(6.4, 2)).toBe('6,40 mm');
    expect(await words.use('en')).toBe(true);
    expect(words.text.sort.title).toBe(en.sort.title);
  });

  it('keep English at any depth where a word is missing', async () => {
    await words.load('crew');
    expect(await words.use('pl')).toBe(true);
    expect(words.text.crew.join.join).toBe('Dołącz');
    const inPolish = pathsOf(words.text.crew);
    for (const [path] of pathsOf(crew)) expect(inPolish.get(path), path).toBeDefined();
    expect(await words.use('en')).toBe(true);
  });

  it('write a decimal comma in the four languages', () => {
    for (const locale of Object.keys(TRANSLATIONS))
      expect(new NumberWords(locale).mm(6.4, 1)).toBe('6,4 mm');
  });
});
