import { useEffect, useRef, useState } from 'preact/hooks';
import './shared/base.css';
import { AssessorScreen } from './AssessorScreen.tsx';
import { BenchScreen } from './apprentice/BenchScreen.tsx';
import { DebriefScreen } from './apprentice/DebriefScreen.tsx';
import { JobScreen, JobsScreen } from './apprentice/JobScreens.tsx';
import { InstructorScreen } from './InstructorScreen.tsx';
import { LazySettings } from './LazySettings.tsx';
import { Problems } from './Problems.tsx';
import { type Route, writeRoute } from './route.ts';
import { Button } from './shared/Button.tsx';
import type { Desk, JobSummary, Settings, ShellProps, StoredProblem } from './shell.ts';
import { useHeadingFocus } from './useHeadingFocus.ts';
import { useRoute } from './useRoute.ts';

/** The board as it was last read: a card taken from it is there at once, and brought up to date. */
export interface BoardMemory {
  last: readonly JobSummary[];
  /** Read for the first screen, which need not read it again. */
  isNew: boolean;
}

/** What every screen of the shell gets. */
export interface ScreenContext {
  readonly desk: Desk;
  readonly settings: Settings;
  readonly changeSettings: (settings: Settings) => void;
  readonly openSettings: () => void;
  readonly report: (problem: StoredProblem) => void;
  readonly board: BoardMemory;
}

/** The frame round all screens: address, settings, and what could not be read. */
export function App(props: ShellProps) {
  const route = useRoute();
  const [settings, setSettings] = useState(props.settings);
  const problems = useProblems(props.problems);
  const board = useRef<BoardMemory>({ last: props.board, isNew: true });
  useEffect(() => {
    board.current.isNew = false;
  }, []);
  const [settingsOpen, setSettingsOpen] = useState(false);
  useSettingsOnPage(settings);
  useHeadingFocus(writeRoute(route));
  const context: ScreenContext = {
    desk: props.desk,
    settings,
    changeSettings: (next) => {
      setSettings(next);
      props.desk.saveSettings(next);
    },
    openSettings: () => setSettingsOpen(true),
    report: problems.report,
    board: board.current,
  };
  return (
    <div class={`app app-${route.screen}`}>
      <button type="button" class="skip" onClick={() => document.getElementById('content')?.focus()}>
        Skip to the work
      </button>
      {route.screen === 'bench' ? null : <TopBar context={context} />}
      <Problems problems={problems.shown} onDismiss={problems.dismiss} />
      <div id="content" tabIndex={-1}>
        <Screen route={route} context={context} />
      </div>
      {settingsOpen ? (
        <LazySettings
          settings={settings}
          onChange={context.changeSettings}
          onClose={() => setSettingsOpen(false)}
        />
      ) : null}
    </div>
  );
}

interface KnownProblems {
  readonly shown: readonly StoredProblem[];
  readonly report: (problem: StoredProblem) => void;
  readonly dismiss: (problem: StoredProblem) => void;
}

/** Problems handed in by the app, at the start or later, and those the screens met; each until it is put away. */
function useProblems(given: readonly StoredProblem[]): KnownProblems {
  const [met, setMet] = useState<readonly StoredProblem[]>([]);
  const [gone, setGone] = useState<readonly StoredProblem[]>([]);
  return {
    shown: [...given, ...met].filter((problem) => !gone.includes(problem)),
    report: (problem) => setMet((all) => [...all.filter((one) => one.where !== problem.where), problem]),
    dismiss: (problem) => setGone((all) => [...all, problem]),
  };
}

function Screen(props: { readonly route: Route; readonly context: ScreenContext }) {
  const { route, context } = props;
  if (route.screen === 'jobs') return <JobsScreen context={context} />;
  if (route.screen === 'job') return <JobScreen key={route.id} jobId={route.id} context={context} />;
  if (route.screen === 'bench') return <BenchScreen key={route.id} attemptId={route.id} context={context} />;
  if (route.screen === 'debrief')
    return <DebriefScreen key={route.id} attemptId={route.id} context={context} />;
  const Desk = route.screen === 'assessor' ? AssessorScreen : InstructorScreen;
  return <Desk rest={route.rest} context={context} />;
}

function TopBar(props: { readonly context: ScreenContext }) {
  return (
    <header class="top">
      <a class="top-name" href={writeRoute({ screen: 'jobs' })}>
        Slot &amp; Riser
      </a>
      <span class="top-place">Quarry Road Training Workshop</span>
      <nav class="top-desks" aria-label="Desks">
        <a href={writeRoute({ screen: 'jobs' })}>Jobs</a>
        <a href={writeRoute({ screen: 'instructor', rest: '' })}>Instructor’s desk</a>
        <a href={writeRoute({ screen: 'assessor', rest: '' })}>Assessor’s desk</a>
      </nav>
      <Button kind="quiet" onPress={props.context.openSettings}>
        Settings
      </Button>
    </header>
  );
}

function useSettingsOnPage(settings: Settings): void {
  useEffect(() => {
    document.documentElement.dataset.motion = settings.motion;
    document.documentElement.lang = settings.vocabulary === 'british' ? 'en-GB' : 'en-US';
  }, [settings.motion, settings.vocabulary]);
}
