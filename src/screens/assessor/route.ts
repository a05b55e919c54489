/** The assessor's pages, as the part of the address after `#/assessor`. */
export type AssessorRoute =
  | { readonly page: 'attempts' | 'records' | 'check' | 'agreement' | 'keys' | 'safe' }
  | { readonly page: 'review' | 'record'; readonly id: string };

const PLAIN = ['attempts', 'records', 'check', 'agreement', 'keys', 'safe'] as const;

/** @param rest  such as `/review/3f2a…`; anything unknown leads to the list of attempts */
export function readAssessorRoute(rest: string): AssessorRoute {
  const [page, id] = rest.replace(/^\//, '').split('/');
  if ((page === 'review' || page === 'record') && id) return { page, id: decoded(id) };
  const plain = PLAIN.find((one) => one === page);
  return { page: plain ?? 'attempts' };
}

/** The whole hash of a page. */
export function writeAssessorRoute(route: AssessorRoute): string {
  return 'id' in route
    ? `#/assessor/${route.page}/${encodeURIComponent(route.id)}`
    : `#/assessor/${route.page}`;
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
