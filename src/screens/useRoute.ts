import { useEffect, useState } from 'preact/hooks';
import { type Route, readRoute, writeRoute } from './route.ts';

export function goTo(route: Route): void {
  location.hash = writeRoute(route);
}

/** The screen the address bar asks for, the board where there is none; follows the back and forward buttons. */
export function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(globalThis.location?.hash ?? ''));
  useEffect(() => {
    const follow = () => setRoute(readRoute(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return route;
}
