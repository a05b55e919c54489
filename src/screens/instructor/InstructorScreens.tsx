import { KeepSafePage } from '../shared/KeepSafePage.tsx';
import { usePageTitle } from '../shared/usePageTitle.ts';
import type { Settings } from '../shell.ts';
import type { InstructorDesk } from './desk.ts';
import { JobPage } from './JobPage.tsx';
import { JobsPage } from './JobsPage.tsx';
import { type InstructorRoute, writeInstructorRoute } from './route.ts';
import { SetPage } from './SetPage.tsx';
import './instructor.css';

export interface InstructorScreensProps {
  readonly desk: InstructorDesk;
  readonly route: InstructorRoute;
  readonly settings: Pick<Settings, 'vocabulary'>;
}

/** What every page of the instructor's desk gets. */
export type InstructorPageProps = Omit<InstructorScreensProps, 'route'>;

const PLACES = [
  ['jobs', 'Jobs made here'],
  ['set', 'A set for a class'],
  ['safe', 'Keep safe'],
] as const;

/** The instructor's desk: faults are hidden here and jobs handed out. */
export function InstructorScreens({ route, ...props }: InstructorScreensProps) {
  usePageTitle('Instructor’s desk');
  const here = route.page === 'job' ? 'jobs' : route.page;
  return (
    <div class="in-desk">
      <nav class="in-nav no-print" aria-label="Instructor’s desk">
        <span class="in-nav-name">Instructor’s desk</span>
        <ul>
          {PLACES.map(([page, words]) => (
            <li key={page}>
              <a href={writeInstructorRoute({ page })} aria-current={here === page ? 'page' : undefined}>
                {words}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {route.page === 'jobs' ? <JobsPage {...props} /> : null}
      {route.page === 'set' ? <SetPage {...props} /> : null}
      {route.page === 'safe' ? <KeepSafePage safe={props.desk.safe} page="in-page" /> : null}
      {route.page === 'job' ? <JobPage key={route.id} jobId={route.id} {...props} /> : null}
    </div>
  );
}
