/** Script time per frame out of a trace of the browser. */

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Start and length on the clock, µs; length in processor time, µs. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

/** Everything in which the page's own script runs; what lies inside another of these is counted with it. */
const SCRIPT = new Set([
  'FireAnimationFrame',
  'EventDispatch',
  'TimerFire',
  'FunctionCall',
  'EvaluateScript',
  'RunMicrotasks',
]);
const FRAME = 'FireAnimationFrame';
/** Callbacks no further apart than this belong to one frame, µs. */
const SAME_FRAME_US = 3000;

/** Processor time of all script between one drawn frame and the next, ms, frame by frame. */
export function scriptPerFrame(trace: string): number[] {
  const { traceEvents } = JSON.parse(trace) as { readonly traceEvents: readonly TraceEvent[] };
  const whole = traceEvents.filter(
    ({ ph, name, dur }) => ph === 'X' && dur !== undefined && SCRIPT.has(name),
  );
  const main = mainThread(whole);
  const own = whole.filter((event) => event.pid === main.pid && event.tid === main.tid);
  const outer = outermost(own.toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0)));
  const sums: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const event of outer) {
    // Several callbacks of one frame follow each other at once; the next frame is a while away.
    if (event.name === FRAME && event.ts - last > SAME_FRAME_US) sums.push(0);
    if (event.name === FRAME) last = event.ts + (event.dur ?? 0);
    if (sums.length > 0) sums[sums.length - 1]! += (event.tdur ?? event.dur ?? 0) / 1000;
  }
  return sums;
}

/** Processor time of the timers that ran longest, ms. */
export function longestTimers(trace: string, count: number): number[] {
  const { traceEvents } = JSON.parse(trace) as { readonly traceEvents: readonly TraceEvent[] };
  const timers = traceEvents.filter(({ ph, name }) => ph === 'X' && name === 'TimerFire');
  const took = timers.map(({ tdur, dur }) => (tdur ?? dur ?? 0) / 1000);
  return took.sort((a, b) => b - a).slice(0, count);
}

function mainThread(events: readonly TraceEvent[]): TraceEvent {
  const counts = new Map<string, { event: TraceEvent; frames: number }>();
  for (const event of events.filter(({ name }) => name === FRAME)) {
    const key = `${event.pid}/${event.tid}`;
    counts.set(key, { event, frames: (counts.get(key)?.frames ?? 0) + 1 });
  }
  const [most] = [...counts.values()].sort((a, b) => b.frames - a.frames);
  if (!most) throw new Error('The trace has no animation frame.');
  return most.event;
}

function outermost(sorted: readonly TraceEvent[]): TraceEvent[] {
  const found: TraceEvent[] = [];
  let until = 0;
  for (const event of sorted) {
    if (event.ts < until) continue;
    found.push(event);
    until = event.ts + (event.dur ?? 0);
  }
  return found;
}

/** The value below which so much of all lies. @param share 0..1 */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
