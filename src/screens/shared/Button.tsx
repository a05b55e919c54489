import type { ComponentChildren } from 'preact';

export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onPress: () => void;
  readonly kind?: 'main' | 'plain' | 'quiet' | 'danger';
  readonly disabled?: boolean;
  /** For two-state buttons. */
  readonly pressed?: boolean;
  /** Spoken name where the visible text is too short to stand alone; it must hold the visible text. */
  readonly label?: string;
  /** Key shown on the button; the key itself is handled by the region that owns it. */
  readonly keyHint?: string;
}

export function Button(props: ButtonProps) {
  return (
    <button
      type="button"
      class={`button button-${props.kind ?? 'plain'}`}
      disabled={props.disabled ?? false}
      aria-pressed={props.pressed}
      aria-label={props.label}
      data-key={props.keyHint}
      onClick={props.onPress}
    >
      {props.children}
    </button>
  );
}
