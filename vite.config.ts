import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  worker: { format: 'es' },
  test: {
    include: [
      'src/**/*.test.ts',
      'tests/published/**/*.test.ts',
      'tests/properties/**/*.test.ts',
      'lint/**/*.test.ts'
    ],
    testTimeout: 30_000,
    restoreMocks: true
  }
});
