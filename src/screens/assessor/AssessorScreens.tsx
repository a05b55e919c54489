import { KeepSafePage } from '../shared/KeepSafePage.tsx';
import { usePageTitle } from '../shared/usePageTitle.ts';
import type { Settings } from '../shell.ts';
import { AgreementPage } from './AgreementPage.tsx';
import { AttemptsPage } from './AttemptsPage.tsx';
import { CheckPage } from './check/CheckPage.tsx';
import type { AssessorDesk } from './desk.ts';
import { KeysPage } from './KeysPage.tsx';
import { RecordPage } from './record/RecordPage.tsx';
import { RecordsPage } from './record/RecordsPage.tsx';
import { ReviewPage } from './review/ReviewPage.tsx';
import { type AssessorRoute, writeAssessorRoute } from './route.ts';
import '../apprentice/debrief/debrief.css';
import './assessor.css';

export interface AssessorScreensProps {
  readonly desk: AssessorDesk;
  readonly route: AssessorRoute;
  readonly settings: Pick<Settings, 'vocabulary' | 'motion'>;
}

/** What every page of the assessor's desk gets. */
export type AssessorPageProps = Omit<AssessorScreensProps, 'route'>;

const PLACES = [
  ['attempts', 'Finished attempts'],
  ['records', 'Drafts and records'],
  ['check', 'Check a file'],
  ['agreement', 'Two assessors'],
  ['keys', 'Keys'],
  ['safe', 'Keep safe'],
] as const;

/** The assessor's desk: finished attempts are watched, judged and signed for here. */
export function AssessorScreens({ route, ...props }: AssessorScreensProps) {
  usePageTitle('Assessor’s desk');
  return (
    <div class={`as-desk as-${route.page}`}>
      <nav class="as-nav no-print" aria-label="Assessor’s desk">
        <span class="as-nav-name">Assessor’s desk</span>
        <ul>
          {PLACES.map(([page, words]) => (
            <li key={page}>
              <a
                href={writeAssessorRoute({ page })}
                aria-current={placeOf(route) === page ? 'page' : undefined}
              >
                {words}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <Page route={route} {...props} />
    </div>
  );
}

function placeOf({ page }: AssessorRoute): (typeof PLACES)[number][0] {
  if (page === 'review') return 'attempts';
  return page === 'record' ? 'records' : page;
}

function Page({ route, ...props }: AssessorScreensProps) {
  switch (route.page) {
    case 'attempts':
      return <AttemptsPage {...props} />;
    case 'review':
      return <ReviewPage key={route.id} draftId={route.id} {...props} />;
    case 'records':
      return <RecordsPage {...props} />;
    case 'record':
      return <RecordPage key={route.id} recordId={route.id} {...props} />;
    case 'check':
      return <CheckPage {...props} />;
    case 'agreement':
      return <AgreementPage {...props} />;
    case 'keys':
      return <KeysPage {...props} />;
    case 'safe':
      return <KeepSafePage safe={props.desk.safe} page="as-page" />;
  }
}
