import { useEffect, useRef } from 'preact/hooks';

/** A screen that has not put up its heading after so long is left alone, ms. */
const PATIENCE_MS = 20_000;

/**
 * Moves the focus to the heading of each new screen, as soon as it is there, so that whoever listens or works with keys
 * begins at its top. The first screen keeps what the browser chose, and so does anyone who was quicker.
 * @param address changes with the screen
 */
export function useHeadingFocus(address: string): void {
  const before = useRef(address);
  useEffect(() => {
    if (before.current === address) return;
    before.current = address;
    return whenHeaded((heading) => {
      heading.tabIndex = -1;
      heading.focus({ preventScroll: true });
      scrollTo(0, 0);
    });
  }, [address]);
}

/** Calls back once with the heading of the screen, now or when it comes. @returns the way to stop waiting */
function whenHeaded(then: (heading: HTMLElement) => void): () => void {
  const content = document.getElementById('content');
  let timer: ReturnType<typeof setTimeout> | null = null;
  let frame = 0;
  const observer = new MutationObserver(() => look());
  const stop = () => {
    observer.disconnect();
    cancelAnimationFrame(frame);
    if (timer !== null) clearTimeout(timer);
  };
  const look = () => {
    const heading = content?.querySelector('h1');
    if (!heading) return;
    stop();
    // With the next picture, for which the page is laid out anyway.
    frame = requestAnimationFrame(() => {
      if (heading.isConnected && !isBusyElsewhere()) then(heading);
    });
  };
  if (content) observer.observe(content, { childList: true, subtree: true });
  timer = setTimeout(stop, PATIENCE_MS);
  look();
  return stop;
}

/** Someone has already gone on to a field or a dialog. */
function isBusyElsewhere(): boolean {
  const at = document.activeElement;
  return at instanceof HTMLElement && at.matches('input, select, textarea, dialog *');
}
