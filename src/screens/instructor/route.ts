/** The instructor's pages, as the part of the address after `#/instructor`. */
export type InstructorRoute =
  | { readonly page: 'jobs' | 'set' | 'safe' }
  | { readonly page: 'job'; readonly id: string };

/** @param rest  such as `/job/q-3f2a`; anything unknown leads to the list of jobs */
export function readInstructorRoute(rest: string): InstructorRoute {
  const [page, id] = rest.replace(/^\//, '').split('/');
  if (page === 'job' && id) return { page, id: decoded(id) };
  return { page: page === 'set' || page === 'safe' ? page : 'jobs' };
}

/** The whole hash of a page. */
export function writeInstructorRoute(route: InstructorRoute): string {
  return 'id' in route
    ? `#/instructor/${route.page}/${encodeURIComponent(route.id)}`
    : `#/instructor/${route.page}`;
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
