// The id of a job is known only on its device: these pages are served by the fallback page.
export const prerender = false;
