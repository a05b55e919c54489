import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Plugin, ResolvedConfig } from 'vite';

/**
 * Emits the service worker that keeps the built app usable without a network: every file of the build by name, under
 * a cache named after all their contents, so that a new build never mixes with an old one.
 */
export function offline(): Plugin {
  let config: ResolvedConfig;
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    configResolved(resolved) {
      config = resolved;
    },
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const digest = createHash('sha256');
        const built = Object.values(bundle).map((item) => {
          digest.update(item.fileName).update(item.type === 'chunk' ? item.code : item.source);
          return item.fileName;
        });
        const copied = publicFiles(config.publicDir);
        for (const file of copied) digest.update(file).update(readFileSync(join(config.publicDir, file)));
        const files = ['./', ...built.filter((file) => file !== 'index.html'), ...copied];
        const template = readFileSync(new URL('./worker.js', import.meta.url), 'utf8');
        this.emitFile({
          type: 'asset',
          fileName: 'offline-worker.js',
          source: template
            .replace('__VERSION__', digest.digest('hex').slice(0, 16))
            .replace('__FILES__', JSON.stringify(files.sort())),
        });
      },
    },
  };
}

function publicFiles(root: string): string[] {
  if (!root) return [];
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((item) => item.isFile())
    .map((item) => relative(root, join(item.parentPath, item.name)).replaceAll('\\', '/'));
}
