import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('.', import.meta.url));

// Two projects: `core` runs in milliseconds and needs nothing; `browser` needs the built app and Chromium.
export default defineConfig({
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  esbuild: { jsx: 'automatic' },
  test: {
    env: { BAYCALL_LOG: 'silent' },
    // On two cores the default is one: the core's tests took half as long again.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 600_000,
          hookTimeout: 300_000,
          fileParallelism: false,
          globalSetup: ['tests/browser/built-app.ts'],
        },
      },
    ],
  },
});
