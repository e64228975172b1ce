import type { Handle } from '@sveltejs/kit';

/** Scripts and styles are asked for with the page. Letters follow: the words stand before them. */
export const handle: Handle = ({ event, resolve }) =>
  resolve(event, { preload: ({ type }) => type === 'js' || type === 'css' });
