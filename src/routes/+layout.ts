// Everything runs on the device: pages are shells, and the data never leaves IndexedDB.
export const ssr = false;
export const prerender = true;
