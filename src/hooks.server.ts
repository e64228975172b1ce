import type { Handle } from '@sveltejs/kit';

/** A style of the app as Kit names it in a page; the one that stands in app.html is not written so. */
const STYLE = /<link href="[^"]+" rel="stylesheet">\s*/g;
const APP = '<div class="app-root">';

/**
 * Scripts and styles are asked for with the page. Letters follow: the words stand before them. The
 * styles of the app stand below the first words, which need start.css alone and wait for no other.
 */
export const handle: Handle = ({ event, resolve }) =>
  resolve(event, {
    preload: ({ type }) => type === 'js' || type === 'css',
    transformPageChunk: ({ html }) => {
      const styles = (html.match(STYLE) ?? []).join('');
      return html.replace(STYLE, '').replace(APP, styles + APP);
    }
  });
