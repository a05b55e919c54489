import type { ComponentChildren } from 'preact';

export type NoticeKind = 'refused' | 'warning' | 'problem' | 'good';

const HEADS: Readonly<Record<NoticeKind, string>> = {
  refused: 'Not done',
  warning: 'Careful',
  problem: 'Problem',
  good: 'Done',
};
const SIGNS: Readonly<Record<NoticeKind, string>> = { refused: '✕', warning: '!', problem: '?', good: '✓' };

export interface NoticeProps {
  readonly kind: NoticeKind;
  readonly children: ComponentChildren;
  readonly onDismiss?: () => void;
}

/** One thing the reader should know; kind is told by sign and word as well as by colour. */
export function Notice(props: NoticeProps) {
  return (
    <div class={`notice notice-${props.kind}`}>
      <span class="notice-sign" aria-hidden="true">
        {SIGNS[props.kind]}
      </span>
      <div class="notice-text">
        <strong>{HEADS[props.kind]}. </strong>
        {props.children}
      </div>
      {props.onDismiss ? (
        <button type="button" class="notice-close" aria-label="Put this note away" onClick={props.onDismiss}>
          <span aria-hidden="true">✕</span>
        </button>
      ) : null}
    </div>
  );
}
