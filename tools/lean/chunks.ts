import { resolve } from 'node:path';

/** What the bundler tells of the modules. */
interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

const FIRST = resolve('src/app/main.ts');

/**
 * Everything the page begins with comes as one file, named core: what is always loaded together is smaller, and sooner
 * there, in one piece.
 * @returns a function that names the piece of a module, or null for one that is fetched when it is wanted
 */
export function pieces(): (id: string, graph: Graph) => string | null {
  let core: ReadonlySet<string> | undefined;
  return (id, graph) => {
    core ??= staticallyReached(FIRST, graph);
    return core.has(id) ? 'core' : null;
  };
}

function staticallyReached(entry: string, graph: Graph): ReadonlySet<string> {
  const found = new Set<string>();
  const todo = [entry];
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    todo.push(...(graph.getModuleInfo(id)?.importedIds ?? []));
  }
  return found;
}
