import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';

export interface DialogProps {
  readonly title: string;
  readonly children: ComponentChildren;
  /** Called for Escape and the like; leave it out for a dialog that must be answered. */
  readonly onClose?: () => void;
  readonly kind?: 'paper' | 'alarm';
}

/** A native modal dialog: focus stays inside, Escape closes, focus returns to where it was. */
export function Dialog(props: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const shown = dialog.current;
    const before = document.activeElement;
    shown?.showModal();
    // Whatever took the focus, a long dialog is read from its top; its acts stay in sight at the bottom.
    shown?.scrollTo(0, 0);
    return () => {
      shown?.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      class={`dialog dialog-${props.kind ?? 'paper'}`}
      role={props.kind === 'alarm' ? 'alertdialog' : undefined}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        props.onClose?.();
      }}
    >
      <h2 id={titleId}>{props.title}</h2>
      {props.children}
    </dialog>
  );
}
