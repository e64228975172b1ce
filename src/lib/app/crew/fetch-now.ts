/** Fetch as the page's own: handed on bare, a browser would refuse to run it. */
export const fetchNow = (url: string, init: RequestInit): Promise<Response> => fetch(url, init);
