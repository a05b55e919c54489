import type { ComponentChildren } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef } from 'preact/hooks';

export interface GroupFrameProps {
  readonly title: string;
  /** How the thing stands right now, in a few words. */
  readonly state: string;
  readonly children: ComponentChildren;
}

/** One thing on the bench: how it stands, and what can be done with it. */
export function Group(props: GroupFrameProps) {
  const id = useId();
  const frame = useRef<HTMLElement>(null);
  useFocusKept(frame);
  return (
    <section class="group" aria-labelledby={id} ref={frame}>
      <h2 id={id}>{props.title}</h2>
      <p class="group-state">{props.state}</p>
      {props.children}
    </section>
  );
}

/** A button that goes away under the finger hands the focus to the first thing that can be done in its group. */
function useFocusKept(frame: { readonly current: HTMLElement | null }): void {
  const had = useRef(false);
  useEffect(() => {
    const follow = (event: Event) => {
      had.current = event.target instanceof Node && frame.current?.contains(event.target) === true;
    };
    document.addEventListener('focusin', follow);
    document.addEventListener('pointerdown', follow);
    return () => {
      document.removeEventListener('focusin', follow);
      document.removeEventListener('pointerdown', follow);
    };
  }, []);
  useLayoutEffect(() => {
    const lost = had.current && document.activeElement === document.body;
    if (lost) frame.current?.querySelector<HTMLElement>('select, button')?.focus();
  });
}
