import type { LibraryFiles } from '../../src/app/checkLibrary.ts';

/** The library bundled with the page, for tools that look at screens by themselves. */
export const FILES: LibraryFiles = {
  parts: import.meta.glob('../../scenarios/parts/*.json', { eager: true, import: 'default' }),
  scenarios: import.meta.glob('../../scenarios/*.json', { eager: true, import: 'default' }),
};
