import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
  '.wav': 'audio/wav',
};

export interface TwoVersions {
  readonly url: string;
  /** From now on the next version is served, and the files of the first are gone. */
  release(): void;
  close(): Promise<void>;
}

/** Serves the built app, and later a next version of it whose files all go by other names. */
export async function serveTwoVersions(marker: string): Promise<TwoVersions> {
  const next = mkdtempSync(join(tmpdir(), 'next-version-'));
  makeNext(next, marker);
  let root = 'dist';
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://localhost').pathname);
    const file = join(root, path === '/' ? 'index.html' : path);
    try {
      const body = readFileSync(file);
      response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return {
    url: `http://127.0.0.1:${port}/`,
    release: () => {
      root = next;
    },
    close: async () => {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
      rmSync(next, { recursive: true, force: true });
    },
  };
}

/** A copy of the build under another version: every script renamed wherever it is named, and a marker on the page. */
function makeNext(folder: string, marker: string): void {
  cpSync('dist', folder, { recursive: true });
  const assets = join(folder, 'assets');
  const scripts = readdirSync(assets).filter((file) => file.endsWith('.js'));
  const renamed = (text: string) =>
    scripts.reduce((all, file) => all.replaceAll(file, file.replace(/\.js$/, '.next.js')), text);
  for (const file of scripts) {
    const path = join(assets, file);
    writeFileSync(path, renamed(readFileSync(path, 'utf8')));
    renameSync(path, path.replace(/\.js$/, '.next.js'));
  }
  for (const file of ['index.html', 'offline-worker.js']) {
    const path = join(folder, file);
    const text = renamed(readFileSync(path, 'utf8'));
    writeFileSync(
      path,
      text
        .replace('<head>', `<head><meta name="version" content="${marker}" />`)
        .replace(/-[0-9a-f]{16}'/, `-${marker}'`),
    );
  }
}
