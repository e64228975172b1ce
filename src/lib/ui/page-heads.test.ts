import { describe, expect, it } from 'vitest';
import { pageHeadStyle } from './page-heads.ts';

describe('the head that the printer writes on every page', () => {
  it('counts the pages within the words of the language', () => {
    const style = pageHeadStyle({
      left: 'Barn, claim',
      right: '3 Mar 2026',
      page: (page, pages) => `strona ${page} z ${pages}`
    });
    expect(style).toContain(
      'content: "strona " counter(page) " z " counter(pages) " · 3 Mar 2026"'
    );
    expect(style).toContain('@top-left { content: "Barn, claim";');
  });

  it('keeps a name with quotes, backslashes and line ends in its string', () => {
    const left = '"; } body { display: none } \\ \n';
    const style = pageHeadStyle({ left, right: '', page: (page) => `${page}` });
    expect(style).toContain('"\\22 ; } body { display: none } \\5c  \\a "');
  });
});
