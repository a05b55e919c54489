import { defineConfig } from 'vite';

/** The screens by themselves, on hand-made data: `npx vite --port 5192 tools/screens`. */
export default defineConfig({ root: import.meta.dirname, server: { fs: { allow: ['../..'] } } });
