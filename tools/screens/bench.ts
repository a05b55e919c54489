import type { Action } from '../../src/bench/action.ts';
import { barAngleDeg, barAt } from '../../src/bench/geometry.ts';
import type { Observation } from '../../src/bench/observation.ts';
import { barOf, barPlace, type LeadId } from '../../src/bench/places.ts';
import type { BenchPort, Outcome } from '../../src/bench/port.ts';
import { LEADS_HUNG, UNTOUCHED } from '../../src/bench/untouched.ts';
import type { Job } from '../../src/scenario/public/job.ts';
import type { OpenBench } from '../../src/screens/shell.ts';

const START: Observation = {
  ...UNTOUCHED,
  atMs: 754_000,
  cradle: 'armature',
  hum: { level: 0, pitchHz: 100, harshness: 2 },
};

/**
 * A bench for looking at the screens only: it remembers where things are and shows hand-made values. It knows no
 * physics and no part, and is used nowhere else.
 */
export function handMadeBench(job: Job): OpenBench {
  const port = handMadePort(job);
  return {
    job,
    port,
    written: [],
    verdicts: [],
    remedies: [],
    mountScene: (host) => {
      const picture = document.createElement('div');
      picture.className = 'harness-picture';
      picture.textContent = 'The scene is drawn here';
      picture.style.cssText =
        'position:absolute;inset:0;display:grid;place-items:center;background:#143a42;color:#dfeeea';
      host.append(picture);
      return () => picture.remove();
    },
    setMuted: () => {},
    captions: () => () => {},
    overhear: () => () => {},
    close: () => {},
  };
}

function handMadePort(job: Job): BenchPort {
  let seen = START;
  const listeners = new Set<(seen: Observation) => void>();
  return {
    send(action) {
      const outcome = outcomeOf(action, seen, job);
      if (outcome.kind === 'done') seen = dressed(moved(seen, action, job), outcome);
      for (const listener of listeners) listener(seen);
      return outcome;
    },
    look: () => seen,
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    pause: () => {},
    resume: () => {},
  };
}

function outcomeOf(action: Action, seen: Observation, job: Job): Outcome {
  if (action.type === 'lead.take' && action.grip === 'tip') {
    const sentence = 'A bare tip was held while the lamp circuit was live.';
    return { kind: 'done', breaches: [{ interlock: 'tipHeld', sentence, critical: true }] };
  }
  if (action.type === 'armature.lift' && seen.supply === 'on') {
    const breach = {
      interlock: 'lifted',
      sentence: 'The armature was lifted with the bench on.',
      critical: false,
    };
    return job.mode === 'guided'
      ? { kind: 'refused', sentence: breach.sentence, breaches: [breach] }
      : { kind: 'done', breaches: [breach] };
  }
  if (action.type === 'strip.hold' && seen.strip.at === 'rail') {
    return { kind: 'refused', sentence: 'The strip is on its rail: take it first.', breaches: [] };
  }
  return { kind: 'done', breaches: [] };
}

function dressed(seen: Observation, outcome: Outcome): Observation {
  const critical = outcome.breaches.find((breach) => breach.critical);
  const bars = (['ammeter.1', 'ammeter.2'] as const).every((lead) =>
    seen.leads[lead].touches?.startsWith('bar'),
  );
  const on = seen.supply === 'on';
  return {
    ...seen,
    needle: { deflection: on && bars ? 0.328 : 0, pegged: false, atRest: true },
    hum: { ...seen.hum, level: on ? 8 : 0 },
    stopped: critical ? { sentence: critical.sentence } : null,
  };
}

function moved(seen: Observation, action: Action, job: Job): Observation {
  switch (action.type) {
    case 'selector.turn':
      return { ...seen, selector: action.to, supply: action.to === 'off' ? 'off' : 'on' };
    case 'range.turn':
      return { ...seen, rangeA: action.to };
    case 'armature.place':
    case 'armature.lift':
      return { ...seen, cradle: action.type === 'armature.place' ? 'armature' : 'empty' };
    case 'armature.hold':
    case 'armature.release':
      return {
        ...seen,
        hands: [{ holds: action.type === 'armature.hold' ? 'armature' : 'nothing' }, seen.hands[1]],
      };
    case 'armature.turn':
      return turned(seen, action.byDeg, job);
    case 'chalk.mark':
      return { ...seen, chalkedBar: action.bar };
    case 'lens.look':
      return { ...seen, look: { place: action.place, sees: ['brightSolder'] } };
    case 'strip.take':
    case 'strip.away':
      return { ...seen, strip: { ...START.strip, at: 'hand' } };
    case 'strip.hang':
      return { ...seen, strip: START.strip };
    case 'strip.hold':
      return {
        ...seen,
        strip: { at: 'core', angleDeg: action.angleDeg, heightMm: action.heightMm, pull: 2, buzz: 4 },
      };
    default:
      return 'lead' in action ? withLead(seen, action, job) : seen;
  }
}

type LeadAction = Extract<Action, { readonly lead: LeadId }>;

function withLead(seen: Observation, action: LeadAction, job: Job): Observation {
  const before = seen.leads[action.lead];
  const hung = LEADS_HUNG[action.lead];
  const after = {
    'lead.take': { ...hung, at: 'hand', grip: 'handle' },
    'lead.touch': { ...before, ...touchOf(action, seen, job) },
    'lead.lift': { ...before, touches: null, stationDeg: null },
    'lead.clamp': { ...before, at: 'stand', grip: null },
    'lead.holster': hung,
    'lead.lean': { ...before, leaning: action.type === 'lead.lean' && action.on },
  } as const;
  return { ...seen, leads: { ...seen.leads, [action.lead]: after[action.type] } };
}

function touchOf(action: LeadAction, seen: Observation, job: Job) {
  if (action.type !== 'lead.touch') return {};
  const bar = barOf(action.place);
  return {
    touches: action.place,
    stationDeg: bar === null ? null : barAngleDeg(job.armature, bar, seen.rotationDeg),
  };
}

function turned(seen: Observation, byDeg: number, job: Job): Observation {
  const rotationDeg = (((seen.rotationDeg + byDeg) % 360) + 360) % 360;
  const leads = Object.fromEntries(
    Object.entries(seen.leads).map(([lead, view]) => [
      lead,
      view.stationDeg === null
        ? view
        : { ...view, touches: barPlace(barAt(job.armature, view.stationDeg, rotationDeg)) },
    ]),
  ) as Observation['leads'];
  return { ...seen, rotationDeg, leads };
}
