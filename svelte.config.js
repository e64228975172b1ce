import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  compilerOptions: { runes: true },
  kit: {
    // Fixed pages are prerendered; a job's pages are served by the fallback page, also offline.
    adapter: adapter({ fallback: 'fallback.html', strict: false, precompress: true }),
    serviceWorker: { register: false },
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
