import { defineConfig } from 'vite';

/** The desks by themselves over the real store and bench: `npx vite --port 5193 tools/desks`. */
export default defineConfig({
  root: import.meta.dirname,
  server: { port: 5193, strictPort: true, fs: { allow: ['../..'] } },
});
