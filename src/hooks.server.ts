import type { Handle } from '@sveltejs/kit';

/** The letters that every language needs are asked for with the page; the others when they show. */
export const handle: Handle = ({ event, resolve }) =>
  resolve(event, {
    preload: ({ type, path }) =>
      type === 'js' || type === 'css' || (type === 'font' && !path.includes('latin-ext'))
  });
