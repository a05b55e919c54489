import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

const ASSETS = 'dist/assets';

/** Names of the built script files a page with these first files loads with them, itself included. */
export function withImports(first: readonly string[]): string[] {
  const found = new Set<string>();
  const todo = [...first];
  for (let file = todo.pop(); file !== undefined; file = todo.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    const code = readFileSync(`${ASSETS}/${file}`, 'utf8');
    for (const [, name] of code.matchAll(/(?:import|from)\s*["']\.\/([^"']+\.js)["']/g)) todo.push(name!);
  }
  return [...found].sort();
}

/** The built file whose name begins so. */
export function built(name: string): string {
  const files = readdirSync(ASSETS).filter((file) => file.startsWith(`${name}-`) && file.endsWith('.js'));
  const [only] = files;
  if (only === undefined || files.length > 1)
    throw new Error(`Expected one built file ${name}-…js, but came: ${files.join(', ') || 'none'}.`);
  return only;
}

/** What the page itself names: its script and what that imports. */
export function entryFiles(): string[] {
  const page = readFileSync('dist/index.html', 'utf8');
  return [...page.matchAll(/src="\.\/assets\/([^"]+\.js)"/g)].map(([, name]) => name!);
}

/** Size on the way, compressed as a server would, bytes. */
export function gzipped(files: readonly string[]): number {
  return files.reduce((sum, file) => sum + gzipSync(readFileSync(`${ASSETS}/${file}`)).length, 0);
}
