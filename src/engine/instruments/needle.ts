/**
 * The needle of a pointer instrument: a damped second-order system between two stops, solved in closed form, so that
 * where it stands depends only on the time since the pull on it last changed.
 *
 * Deflection is the angle of the needle as a fraction of the full-scale angle: 0 at zero, 1 at full scale.
 */

/** Natural rate, rad/s. At least 2.367 meets a 4 s response at 20 % overshoot (references I05-I07, IEC 60051-1 from memory). */
export const NATURAL_RATE = 3.2;
/** Damping ratio: 9.5 % overshoot; 0.456 would be the 20 % a pointer instrument is allowed (references I04, I06). */
export const DAMPING = 0.6;
/** Upper stop, fraction of full scale. */
export const UPPER_STOP = 1.03;
/** Finest step of a deflection an eye tells apart, fraction of full scale. */
export const DEFLECTION_STEP = 1 / 400;

const DECAY = DAMPING * NATURAL_RATE;
const SWING_RATE = NATURAL_RATE * Math.sqrt(1 - DAMPING * DAMPING);
const HALF_SWING_S = Math.PI / SWING_RATE;

/** A needle let go at `fromDeflection`, moving at `fromRate` (1/s), pulled to `target` ever since. */
export interface NeedleState {
  readonly fromDeflection: number;
  readonly fromRate: number;
  /** Deflection at which pull and spring balance; may lie beyond a stop. */
  readonly target: number;
}

export interface NeedleMotion {
  readonly deflection: number;
  /** Speed, fraction of full scale per second. */
  readonly rate: number;
}

export const NEEDLE_AT_ZERO: NeedleState = { fromDeflection: 0, fromRate: 0, target: 0 };

/**
 * Where the needle stands and how fast it moves.
 * @param sinceMs simulated time since the state began, ms, >= 0
 */
export function needleAt(state: NeedleState, sinceMs: number): NeedleMotion {
  let leg = state;
  let seconds = sinceMs / 1000;
  // Each blow on a stop takes the speed away; what is left cannot reach a stop more than twice again.
  for (let blows = 0; blows < 4; blows += 1) {
    const blow = nextBlow(leg, seconds);
    if (blow === null) return free(leg, seconds);
    if (blow.stays) return { deflection: blow.stop, rate: 0 };
    seconds -= blow.atS;
    leg = { fromDeflection: blow.stop, fromRate: 0, target: leg.target };
  }
  return free(leg, seconds);
}

/** The state to go on with when the pull changes: the motion of the moment, the new target. */
export function retarget(state: NeedleState, sinceMs: number, target: number): NeedleState {
  const { deflection, rate } = needleAt(state, sinceMs);
  return { fromDeflection: deflection, fromRate: rate, target };
}

/**
 * At rest: whatever swing is left stays below one step an eye can tell. A needle that creeps with a warming coil lags by
 * less than that, and a person reads it.
 */
export function atRest(state: NeedleState, sinceMs: number): boolean {
  const { deflection, rate } = needleAt(state, sinceMs);
  const rest = restOf(state.target);
  const { a, b } = swing({ fromDeflection: deflection, fromRate: rate, target: rest });
  if (rest !== state.target) return deflection === rest && rate === 0;
  return Math.hypot(a, b) < DEFLECTION_STEP;
}

/** What an eye gets: deflection in steps of 1/400, whether the needle lies on the upper stop, whether it is still. */
export function seeNeedle(
  state: NeedleState,
  sinceMs: number,
): { deflection: number; pegged: boolean; atRest: boolean } {
  const { deflection } = needleAt(state, sinceMs);
  const seen = Math.round(deflection / DEFLECTION_STEP) * DEFLECTION_STEP;
  const pegged = deflection >= UPPER_STOP - 1e-9;
  return {
    deflection: pegged ? UPPER_STOP : Number(seen.toFixed(4)),
    pegged,
    atRest: atRest(state, sinceMs),
  };
}

function restOf(target: number): number {
  return Math.min(UPPER_STOP, Math.max(0, target));
}

/** Coefficients of x = target + e^(-decay t) (a cos wt + b sin wt). */
function swing({ fromDeflection, fromRate, target }: NeedleState): { a: number; b: number } {
  const a = fromDeflection - target;
  return { a, b: (fromRate + DECAY * a) / SWING_RATE };
}

function free(leg: NeedleState, seconds: number): NeedleMotion {
  const { a, b } = swing(leg);
  const fade = Math.exp(-DECAY * seconds);
  const cos = Math.cos(SWING_RATE * seconds);
  const sin = Math.sin(SWING_RATE * seconds);
  return {
    deflection: leg.target + fade * (a * cos + b * sin),
    rate: fade * ((b * SWING_RATE - a * DECAY) * cos - (a * SWING_RATE + b * DECAY) * sin),
  };
}

interface Blow {
  readonly stop: number;
  readonly atS: number;
  /** The spring holds the needle against this stop for good. */
  readonly stays: boolean;
}

/** The next meeting with a stop before `untilS`, or null. */
function nextBlow(leg: NeedleState, untilS: number): Blow | null {
  const resting = heldByStop(leg);
  if (resting !== null) return { stop: resting, atS: 0, stays: true };
  let from = 0;
  // The swing shrinks: if a stop is met at all, it is met before the third turning point.
  for (const turn of turningPoints(leg)) {
    const to = Math.min(turn, untilS);
    const end = free(leg, to).deflection;
    const stop = end > UPPER_STOP ? UPPER_STOP : end < 0 ? 0 : null;
    if (stop !== null) {
      return { stop, atS: meeting(leg, stop, from, to), stays: restOf(leg.target) === stop };
    }
    if (turn >= untilS) return null;
    from = turn;
  }
  return null;
}

/** The stop a needle lies on and is pressed against, or null. */
function heldByStop({ fromDeflection, fromRate, target }: NeedleState): number | null {
  if (fromDeflection >= UPPER_STOP && target >= UPPER_STOP && fromRate >= 0) return UPPER_STOP;
  if (fromDeflection <= 0 && target <= 0 && fromRate <= 0) return 0;
  return null;
}

/** The first three instants at which the free needle turns round, s, all > 0. */
function turningPoints(leg: NeedleState): readonly number[] {
  const { a, b } = swing(leg);
  const phase = Math.atan2(b * SWING_RATE - a * DECAY, a * SWING_RATE + b * DECAY);
  let first = phase / SWING_RATE;
  while (first <= 1e-9) first += HALF_SWING_S;
  return [first, first + HALF_SWING_S, first + 2 * HALF_SWING_S];
}

/** Bisection for the instant the free needle meets `stop` on a stretch where it moves one way. */
function meeting(leg: NeedleState, stop: number, from: number, to: number): number {
  const side = (t: number) => free(leg, t).deflection > stop;
  const after = side(to);
  let low = from;
  let high = to;
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (side(middle) === after) high = middle;
    else low = middle;
  }
  return high;
}
