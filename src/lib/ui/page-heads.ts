/** What stands at the head of every printed page. */
export interface PageHead {
  /** Whose it is and what it is. */
  readonly left: string;
  /** Behind the number of the page: when, and which print. */
  readonly right: string;
  /** The number of a page among all, in words. */
  readonly page: (page: number, pages: number) => string;
}

/** Numbers that stand in the words for what the printer counts. */
const PAGE = 1111;
const PAGES = 2222;

/**
 * The style of a page whose head the printer writes: for papers that the browser breaks into pages by
 * itself, so that nobody knows their number before. A browser without boxes in the margins of a page
 * prints none.
 *
 * @source CSS Paged Media Module Level 3, margin boxes and page counters
 */
export function pageHeadStyle({ left, right, page }: PageHead): string {
  const counted = page(PAGE, PAGES)
    .split(new RegExp(`(${PAGE}|${PAGES})`))
    .filter((part) => part !== '')
    .map((part) =>
      part === String(PAGE)
        ? 'counter(page)'
        : part === String(PAGES)
          ? 'counter(pages)'
          : quoted(part)
    );
  const box = 'font: 9pt sans-serif; padding-bottom: 1mm; vertical-align: bottom;';
  return `@page { @top-left { content: ${quoted(left)}; ${box} } @top-right { content: ${counted.join(' ')} ${quoted(` · ${right}`)}; ${box} white-space: nowrap; } }`;
}

/** Puts a head on every page that is printed until the returned function is called. */
export function showPageHead(head: PageHead): () => void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(pageHeadStyle(head));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
  };
}

/** Words as a string of CSS. @source CSS Syntax Module Level 3, strings and escapes */
function quoted(words: string): string {
  return `"${words.replace(/["\\\p{Cc}]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `)}"`;
}
