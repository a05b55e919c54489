import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import type { BenchEvent } from '../../src/bench/happening.ts';
import { breachesOf, type InterlockCode } from '../../src/bench/interlocks.ts';
import { ARMATURE_KIT, type Kit } from '../../src/bench/kit.ts';
import { type BenchSnapshot, benchMachine, type Told } from '../../src/bench/machine.ts';
import type { Mode, Outcome } from '../../src/bench/port.ts';
import type { BenchState } from '../../src/bench/state.ts';
import { benchState, tell } from '../../src/bench/step.ts';

/** Four bars a quarter turn apart: near, bottom, far (out of reach) and top. */
export const FOUR_BARS = { bars: 4, barZeroDeg: -90 } as const;

export interface Walk {
  readonly mode: Mode;
  /** What a person may do and what may come about, again and again, in any order. */
  readonly alphabet: readonly BenchEvent[];
  /** Left out: an armature and the bench's own leads. */
  readonly kit?: Kit;
  /** Steps that break one of these rules are not taken. */
  readonly without?: readonly InterlockCode[] | 'any breach';
  /** Whether something can come about in a state; everything can unless this says otherwise. */
  readonly when?: (state: BenchState, event: BenchEvent) => boolean;
}

/** One event tried in one state: what was judged of it and where the machine went. */
export interface Step {
  readonly from: BenchState;
  readonly event: BenchEvent;
  readonly outcome: Outcome;
  readonly to: BenchState;
}

/**
 * Walks every state the bench can get into with an alphabet of events and gives every step between them.
 * The walk is xstate's own and complete.
 */
export function walk(asked: Walk): readonly Step[] {
  const key = JSON.stringify(asked) + (asked.when?.toString() ?? '');
  const known = walked.get(key) ?? explore(asked);
  walked.set(key, known);
  return known;
}

/** Walks already made: several proofs look at the same one. */
const walked = new Map<string, readonly Step[]>();

function explore({
  mode,
  alphabet,
  kit = ARMATURE_KIT,
  without = [],
  when = () => true,
}: Walk): readonly Step[] {
  const avoided = (told: Told) =>
    breachesOf(told.stood, told).some(
      ({ interlock }) => without === 'any breach' || without.includes(interlock as InterlockCode),
    );
  const map = getAdjacencyMap(benchMachine, {
    input: { mode, geometry: FOUR_BARS, startRotationDeg: 0, kit },
    events: (snapshot) => alphabet.map((event) => tell(snapshot as BenchSnapshot, event)),
    filterEvents: (_, told) => when(told.stood, told) && !avoided(told),
    serializeState: (snapshot) => fingerprint(snapshot as BenchSnapshot),
    serializeEvent: ({ stood: _, outcome: __, ...event }) => JSON.stringify(event),
  });
  return adjacencyMapToArray<BenchSnapshot, Told>(map).map(({ event, nextState }) => ({
    from: event.stood,
    event,
    outcome: event.outcome,
    to: benchState(nextState),
  }));
}

function fingerprint({ value, context }: BenchSnapshot): string {
  const { geometry: _, mode: __, startRotationDeg: ___, kit: ____, ...kept } = context;
  // Minutes only add up, and no rule asks for them: with them there would be no end of states.
  return JSON.stringify([value, { ...kept, memory: { ...kept.memory, minutesSpent: 0 } }]);
}

/** Every different state a walk comes through. */
export function statesOf(steps: readonly Step[]): readonly BenchState[] {
  return [
    ...new Map(steps.flatMap(({ from, to }) => [from, to]).map((s) => [JSON.stringify(s), s])).values(),
  ];
}

export const SELECTOR: readonly BenchEvent[] = [
  { type: 'selector.turn', to: 'off' },
  { type: 'selector.turn', to: 'low' },
  { type: 'selector.turn', to: 'high' },
];
export const CRADLE: readonly BenchEvent[] = [{ type: 'armature.place' }, { type: 'armature.lift' }];
export const TURNING: readonly BenchEvent[] = [
  { type: 'armature.hold' },
  { type: 'armature.release' },
  { type: 'armature.turn', byDeg: 90 },
];
export const STRIP: readonly BenchEvent[] = [
  { type: 'strip.take' },
  { type: 'strip.hold', angleDeg: 180, heightMm: 0.5 },
  { type: 'strip.away' },
  { type: 'strip.hang' },
];
export const CUT_OUT: readonly BenchEvent[] = [{ type: 'bench.tripped' }, { type: 'bench.cooled' }];
export const PROOF: BenchEvent = { type: 'lamp.proved' };

/** Taking, touching and putting back one lead. */
export function leadWork(
  lead: 'ammeter.1' | 'ammeter.2' | 'lamp.1' | 'lamp.2',
  places: readonly ('bar:0' | 'core' | 'tip:lamp.1' | 'tip:lamp.2')[],
  grips: readonly ('handle' | 'tip')[] = ['handle'],
): readonly BenchEvent[] {
  return [
    ...grips.map((grip): BenchEvent => ({ type: 'lead.take', lead, grip })),
    ...places.map((place): BenchEvent => ({ type: 'lead.touch', lead, place })),
    { type: 'lead.lift', lead },
    { type: 'lead.holster', lead },
  ];
}
