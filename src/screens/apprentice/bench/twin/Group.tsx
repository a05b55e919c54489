import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface GroupFrameProps {
  readonly title: string;
  /** How the thing stands right now, in a few words. */
  readonly state: string;
  readonly children: ComponentChildren;
}

export function Group(props: GroupFrameProps) {
  const id = useId();
  return (
    <section class="group" aria-labelledby={id}>
      <h2 id={id}>{props.title}</h2>
      <p class="group-state">{props.state}</p>
      {props.children}
    </section>
  );
}
