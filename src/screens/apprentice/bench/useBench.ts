import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Action, isStream } from '../../../bench/action.ts';
import type { Observation } from '../../../bench/observation.ts';
import type { BenchPort, Breach, Mode, Outcome } from '../../../bench/port.ts';

/** Something the bench said to the learner. */
export interface Remark {
  readonly id: number;
  readonly kind: 'refused' | 'warning';
  readonly sentence: string;
}

/** At most so many remarks stay in sight. */
const KEEP = 3;
/** While something moves or is moved the page follows a few times a second; the picture follows by itself. */
const FOLLOW_MS = 120;

export interface BenchView {
  /** The same bench; acts sent through it have their refusals and warnings shown. */
  readonly port: BenchPort;
  readonly seen: Observation;
  readonly remarks: readonly Remark[];
  readonly dismiss: (id: number) => void;
}

/** What the page's own bench is made from; the mode decides whether breaches are spoken of at all. */
export interface Benched {
  readonly port: BenchPort;
  readonly job: { readonly mode: Mode };
  readonly overhear: (listener: (breach: Breach) => void) => () => void;
}

/** The bench as the page follows it. @param onDone told of every act of the page or the picture that went through */
export function useBench(
  { port, job: { mode }, overhear }: Benched,
  onDone: (action: Action) => void,
): BenchView {
  const [seen, setSeen] = useState(() => port.look());
  const [remarks, setRemarks] = useState<readonly Remark[]>([]);
  const done = useRef(onDone);
  done.current = onDone;
  useFollowed(port, setSeen);
  useLookedAgain(port, mode === 'guided', setSeen);
  const hear = useRef((_outcome: Outcome) => {});
  const count = useRef(0);
  const isDue = useMemo(sparing, []);
  hear.current = (outcome) => {
    const said = remarksOf(outcome, mode).map((remark) => ({ ...remark, id: count.current++ }));
    setRemarks((before) => joined(before, said, outcome));
  };
  useEffect(() => overhear((breach) => hear.current({ kind: 'done', breaches: [breach] })), [overhear]);
  const own = useMemo<BenchPort>(
    () => ({
      ...boundTo(port),
      send(action) {
        const outcome = port.send(action);
        hear.current(outcome);
        if (isDue(action)) setSeen(port.look());
        if (outcome.kind === 'done') done.current(action);
        return outcome;
      },
    }),
    [port],
  );
  const dismiss = (id: number) => setRemarks((before) => before.filter((remark) => remark.id !== id));
  return { port: own, seen, remarks, dismiss };
}

/** Every act is followed at once, but of those that come with every frame only some. */
function sparing(): (action: Action) => boolean {
  let resting: ReturnType<typeof setTimeout> | null = null;
  return (action) => {
    if (!isStream(action)) return true;
    if (resting !== null) return false;
    resting = setTimeout(() => {
      resting = null;
    }, FOLLOW_MS);
    return true;
  };
}

function boundTo(port: BenchPort): BenchPort {
  return {
    send: (action) => port.send(action),
    look: () => port.look(),
    watch: (listener) => port.watch(listener),
    pause: () => port.pause(),
    resume: () => port.resume(),
  };
}

function useFollowed(port: BenchPort, setSeen: (seen: Observation) => void): void {
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    const stop = port.watch(() => {
      timer ??= setTimeout(() => {
        timer = null;
        setSeen(port.look());
      }, FOLLOW_MS);
    });
    return () => {
      stop();
      if (timer !== null) clearTimeout(timer);
    };
  }, [port]);
}

/** The guide also goes by what does not happen: a lamp that stays dark tells nobody to look. */
function useLookedAgain(port: BenchPort, wanted: boolean, setSeen: (seen: Observation) => void): void {
  useEffect(() => {
    if (!wanted) return;
    const timer = setInterval(() => setSeen(port.look()), LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [port, wanted]);
}
const LOOK_AGAIN_MS = 1000;

/** What is said about an outcome: a refusal always, a breach only in practice; assessed work is watched in silence. */
export function remarksOf(outcome: Outcome, mode: Mode): readonly Omit<Remark, 'id'>[] {
  if (outcome.kind === 'refused') return [{ kind: 'refused', sentence: outcome.sentence }];
  if (mode !== 'practice') return [];
  return outcome.breaches
    .filter((breach) => !breach.critical)
    .map(({ sentence }) => ({ kind: 'warning', sentence }));
}

/** A refusal stands until the next thing that works; a warning until it is put away or pushed out by newer ones. */
function joined(before: readonly Remark[], said: readonly Remark[], outcome: Outcome): readonly Remark[] {
  if (said.length === 0 && !(outcome.kind === 'done' && before.some(isRefusal))) return before;
  const kept = outcome.kind === 'done' ? before.filter((remark) => !isRefusal(remark)) : before;
  const fresh = kept.filter((remark) => !said.some((one) => one.sentence === remark.sentence));
  return [...fresh, ...said].slice(-KEEP);
}

function isRefusal({ kind }: Remark): boolean {
  return kind === 'refused';
}

/** Simulated time now, ms, and the minutes work has taken by the book; ticks once a second. */
export function useClock(port: BenchPort): Pick<Observation, 'atMs' | 'minutesSpent'> {
  const [seen, setSeen] = useState(() => port.look());
  useEffect(() => {
    const timer = setInterval(() => setSeen(port.look()), 1000);
    return () => clearInterval(timer);
  }, [port]);
  return seen;
}
