import type { ComponentChildren } from 'preact';
import type { Parsed } from '../../scenario/scenario.ts';
import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';

export interface AnsweredProps<T> {
  /** Null while it is on its way. */
  readonly answer: Parsed<T> | null;
  /** Said while waiting. */
  readonly waiting: string;
  readonly children: (value: T) => ComponentChildren;
}

/** Something the desk was asked for: on its way, there, or refused with its reasons. */
export function Answered<T>({ answer, waiting, children }: AnsweredProps<T>) {
  if (answer === null)
    return (
      <p class="loading" role="status">
        {waiting}
      </p>
    );
  if (answer.ok) return <>{children(answer.value)}</>;
  return (
    <Notice kind="problem">
      <IssueList issues={answer.issues} />
    </Notice>
  );
}
