import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { checkLibrary } from '../../src/app/checkLibrary.ts';
import type { CheckedLibrary } from '../../src/app/library.ts';

const FOLDER = 'scenarios';
const FILE = 'library.json';

/** Every part and every job that comes with the app, checked, as one data file: content is not script, and it grows. */
export function library(): Plugin {
  return {
    name: 'library',
    configureServer(server) {
      server.middlewares.use(`/${FILE}`, (_, response) => {
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify(libraryAtBuild()));
      });
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: FILE, source: JSON.stringify(libraryAtBuild()) });
    },
  };
}

export function libraryAtBuild(): CheckedLibrary {
  return checkLibrary({ parts: filesIn(join(FOLDER, 'parts')), scenarios: filesIn(FOLDER) });
}

function filesIn(folder: string): Record<string, unknown> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return Object.fromEntries(
    names
      .sort()
      .map((name) => [
        join(folder, name).replaceAll('\\', '/'),
        JSON.parse(readFileSync(join(folder, name), 'utf8')),
      ]),
  );
}
