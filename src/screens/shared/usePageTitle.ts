import { useEffect } from 'preact/hooks';

/** Names the page, so that a new screen is announced and can be found among open windows. */
export function usePageTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} – Slot & Riser`;
  }, [title]);
}
