import { defineConfig } from 'vitest/config';
import { board } from './tools/board/plugin.ts';
import { pieces } from './tools/lean/chunks.ts';
import { lean } from './tools/lean/plugin.ts';
import { readyWhole } from './tools/lean/readyWhole.ts';
import { library } from './tools/library/plugin.ts';
import { offline } from './tools/offline/plugin.ts';

export default defineConfig({
  root: '.',
  base: './',
  publicDir: 'assets/public',
  plugins: [lean(), library(), board(), readyWhole(), offline()],
  build: {
    outDir: 'dist',
    target: 'es2022',
    sourcemap: false,
    chunkSizeWarningLimit: 900,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: pieces() }] } } },
  },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          sequence: { groupOrder: 0 },
          maxWorkers: 2,
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/support/setup.ts'],
          sequence: { groupOrder: 1 },
          maxWorkers: 2,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
