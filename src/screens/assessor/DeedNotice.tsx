import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';
import type { Deed } from './useDeed.ts';

export interface DeedNoticeProps {
  readonly deed: Deed;
  /** Said while it is at work; left out for what is done in a moment. */
  readonly busy?: string;
}

/** What came of something asked for, read out as it appears. */
export function DeedNotice({ deed, busy }: DeedNoticeProps) {
  return (
    <div role="status" class="as-deed">
      {deed.busy && busy !== undefined ? <p class="as-busy">{busy}</p> : null}
      {deed.issues.length > 0 ? (
        <Notice kind="problem" onDismiss={deed.clear}>
          <IssueList issues={deed.issues} />
        </Notice>
      ) : null}
      {deed.said ? (
        <Notice kind="good" onDismiss={deed.clear}>
          {deed.said}
        </Notice>
      ) : null}
    </div>
  );
}
