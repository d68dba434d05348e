import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: [
      'tests/unit/**/*.test.ts',
      'tests/property/**/*.test.ts',
      'tests/protocol/**/*.test.ts',
      'tests/command-line/**/*.test.ts',
      'tests/safety/**/*.test.ts',
      'tests/published/**/*.test.ts',
    ],
  },
});
