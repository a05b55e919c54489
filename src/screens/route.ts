/** The screens that exist, as the address bar names them. */
export type Route =
  | { readonly screen: 'jobs' }
  | { readonly screen: 'job'; readonly id: string }
  | { readonly screen: 'bench'; readonly id: string }
  | { readonly screen: 'debrief'; readonly id: string }
  /** A desk of its own: what follows its name in the address is the desk's to read. */
  | { readonly screen: 'assessor' | 'instructor'; readonly rest: string };

/** Reads the hash of an address; anything unknown leads to the list of jobs. */
export function readRoute(hash: string): Route {
  const path = hash.replace(/^#\/?/, '');
  const [screen, id] = path.split('/');
  if (screen === 'assessor' || screen === 'instructor') return { screen, rest: path.slice(screen.length) };
  if (!id) return { screen: 'jobs' };
  if (screen !== 'job' && screen !== 'bench' && screen !== 'debrief') return { screen: 'jobs' };
  return { screen, id: decode(id) };
}

export function writeRoute(route: Route): string {
  if ('rest' in route) return `#/${route.screen}${route.rest}`;
  return route.screen === 'jobs' ? '#/jobs' : `#/${route.screen}/${encodeURIComponent(route.id)}`;
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
