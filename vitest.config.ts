import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/web/**'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
