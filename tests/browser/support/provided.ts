import type {} from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Path of a Chromium that starts. */
    chromium: string;
    /** Address the built app is served at, with a trailing slash. */
    appUrl: string;
  }
}
