/** Many scripts and styles in one file, so that a poor line pays for few requests. */
export interface Pack {
  readonly path: string;
  /** Of the whole file, as hex. */
  readonly sha256: string;
  /** Paths of what is in it. */
  readonly parts: readonly string[];
}

/** What `scripts/packs.js` wrote of this build; every path is the app's, with the base in front. */
export interface PackList {
  readonly packs: readonly Pack[];
  /** SHA-256 of what the first page fetches by itself, by path. */
  readonly first: ReadonlyMap<string, string>;
}

export const NO_PACKS: PackList = { packs: [], first: new Map() };

/** The list of packs, empty where the host has none: then every part comes by itself. */
export async function fetchPackList(base: string): Promise<PackList> {
  try {
    const response = await fetch(`${base}/packs.json`, { cache: 'reload', priority: 'low' });
    const list: { packs: Pack[]; first: { path: string; sha256: string }[] } =
      await response.json();
    const based = (path: string): string => `${base}/${path}`;
    return {
      packs: list.packs.map(({ path, sha256, parts }) => ({
        path: based(path),
        sha256,
        parts: parts.map(based)
      })),
      first: new Map(list.first.map(({ path, sha256 }) => [based(path), sha256]))
    };
  } catch {
    return NO_PACKS;
  }
}

/**
 * Fetches a pack past the browser's own cache and unpacks it.
 *
 * @returns its parts by path
 * @throws Error when it did not come, or is not what the build wrote
 */
export async function fetchPack({ path, sha256, parts }: Pack): Promise<Map<string, Response>> {
  const response = await fetch(path, { cache: 'reload', priority: 'low' });
  const bytes = await response.arrayBuffer();
  if ((await sha256Of(bytes)) !== sha256) throw new Error(`${path} is not what was built`);
  const texts: Record<string, string> = JSON.parse(new TextDecoder().decode(bytes));
  return new Map(
    Object.values(texts).map((text, index) => {
      const type = parts[index].endsWith('.css') ? 'text/css' : 'text/javascript';
      const headers = { 'Content-Type': `${type}; charset=utf-8` };
      return [parts[index], new Response(text, { headers })];
    })
  );
}

/** A part as the browser's own cache has it, if it is what the build wrote; else nothing. */
export async function fetchKnown(path: string, sha256: string): Promise<Response | undefined> {
  const response = await fetch(path, { cache: 'force-cache', priority: 'low' });
  const isSame = (await sha256Of(await response.clone().arrayBuffer())) === sha256;
  return isSame ? response : undefined;
}

async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
