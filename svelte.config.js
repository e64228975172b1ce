import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writePacks } from './scripts/packs.js';

// Fixed pages are prerendered; a job's pages are served by the fallback page, also offline.
const site = adapter({ fallback: 'fallback.html', strict: false, precompress: true });

/** @type {import('@sveltejs/kit').Adapter} */
const packedSite = {
  ...site,
  adapt(builder) {
    const pages = join(builder.config.kit.outDir, 'output/prerendered/pages');
    writePacks(builder.getClientDirectory(), readFileSync(join(pages, 'index.html'), 'utf8'));
    return site.adapt(builder);
  }
};

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  compilerOptions: { runes: true },
  kit: {
    adapter: packedSite,
    serviceWorker: { register: false },
    // A style this small costs a slow line more to ask for than to carry in the page.
    inlineStyleThreshold: 1000,
    // Absolute, or a link such as the manifest's would follow the page from screen to screen.
    paths: { base: process.env.BASE_PATH ?? '', relative: false },
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['self'],
        'script-src': ['self'],
        'style-src': ['self'],
        // The one inline style: Kit's own announcer for screen readers, allowed by its hash.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'blob:', 'data:'],
        'connect-src': ['self'],
        'worker-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['self'],
        'form-action': ['none']
      }
    }
  }
};
