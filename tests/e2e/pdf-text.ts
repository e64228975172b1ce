import { inflateSync } from 'node:zlib';

/**
 * The text of each page of a PDF as the browser prints it, in the order it was drawn, without white
 * space. Only what Chromium writes is read: plain objects, deflated streams, glyphs of one byte
 * (variable typefaces) or two with a table to Unicode.
 */
export function textOfPages(pdf: Buffer): string[] {
  const objects = new Map<string, string>();
  for (const [, id, body] of pdf.toString('latin1').matchAll(/(\d+) 0 obj\s([\s\S]*?)endobj/g))
    objects.set(id, body);
  const root = [...objects.values()].find((body) => /\/Type\s*\/Catalog\b/.test(body)) ?? '';
  const refOf = (body: string, name: string): string =>
    new RegExp(`/${name}\\s+(\\d+) 0 R`).exec(body)?.[1] ?? '';

  const pagesUnder = (id: string): string[] => {
    const body = objects.get(id) ?? '';
    const kids = /\/Kids\s*\[([^\]]*)\]/.exec(body)?.[1];
    if (kids === undefined) return [body];
    return [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => pagesUnder(kid));
  };
  const glyphsOf = (page: string): Map<string, Map<string, string>> => {
    const named = /\/Font\s*<<([\s\S]*?)>>/.exec(page)?.[1] ?? '';
    return new Map(
      [...named.matchAll(/\/(\S+)\s+(\d+) 0 R/g)].map(([, name, font]) => [
        name,
        unicodeOf(streamOf(objects.get(refOf(objects.get(font) ?? '', 'ToUnicode')) ?? ''))
      ])
    );
  };
  return pagesUnder(refOf(root, 'Pages')).map((page) =>
    drawn(streamOf(objects.get(refOf(page, 'Contents')) ?? ''), glyphsOf(page))
  );
}

/** The inflated stream of an object; empty where it has none. */
function streamOf(body: string): string {
  const start = /stream\r?\n/.exec(body);
  if (!start) return '';
  const from = start.index + start[0].length;
  const length = Number(/\/Length\s+(\d+)/.exec(body)?.[1]);
  return inflateSync(Buffer.from(body.slice(from, from + length), 'latin1')).toString('latin1');
}

/** The letters that a font's glyphs stand for, by glyph in hexadecimal. */
function unicodeOf(table: string): Map<string, string> {
  const letters = new Map<string, string>();
  const letterOf = (hex: string): string =>
    String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((unit) => parseInt(unit, 16)));
  for (const [, lines] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, glyph, hex] of lines.matchAll(/<(\w{2}|\w{4})>\s*<(\w+)>/g))
      letters.set(glyph.toUpperCase(), letterOf(hex));
  for (const [, lines] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, to, hex] of lines.matchAll(
      /<(\w{2}|\w{4})>\s*<(\w{2}|\w{4})>\s*<(\w{4})>/g
    ))
      for (let glyph = parseInt(from, 16); glyph <= parseInt(to, 16); glyph++)
        letters.set(
          glyph.toString(16).toUpperCase().padStart(from.length, '0'),
          String.fromCharCode(parseInt(hex, 16) + glyph - parseInt(from, 16))
        );
  return letters;
}

/** What a page draws as letters. */
function drawn(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let letters: ReadonlyMap<string, string> | undefined;
  let text = '';
  // What a glyph stands for otherwise, such as a space that keeps words together, is not drawn.
  const shown = content.replace(/\/ActualText\s*<[0-9A-Fa-f]*>/g, '');
  for (const [, font, glyphs] of shown.matchAll(/\/(\S+) [\d.]+ Tf|<([0-9A-Fa-f]+)>/g))
    if (font) letters = fonts.get(font);
    else {
      const digits = letters?.keys().next().value?.length ?? 4;
      for (const glyph of glyphs.match(new RegExp(`.{${digits}}`, 'g')) ?? [])
        text += letters?.get(glyph.toUpperCase()) ?? '?';
    }
  return text.normalize('NFKC').replace(/\s/g, ''); // a ligature as its letters
}
