import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';
import type { Deed } from './useDeed.ts';

/** What came of something asked for, read out as it appears. */
export function DeedNotice({ deed }: { readonly deed: Deed }) {
  return (
    <div role="status" class="as-deed">
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
