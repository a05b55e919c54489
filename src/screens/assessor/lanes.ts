import type { Entry } from '../../attempt/entry.ts';
import type { Action } from '../../bench/action.ts';
import { type LeadSet, leadSet } from '../../bench/places.ts';

/** What a person is about at the bench. */
export const LANES = ['look', 'ammeter', 'lamp', 'strip', 'tools', 'remedy', 'bench', 'paper'] as const;
export type Lane = (typeof LANES)[number];

export const LANE_WORDS: Readonly<Record<Lane, string>> = {
  look: 'Looking',
  ammeter: 'Ammeter',
  lamp: 'Lamp',
  strip: 'Strip',
  tools: 'Tester, drop, gauges',
  remedy: 'Remedies',
  bench: 'Bench and part',
  paper: 'Writing',
};

/** A stretch of time spent on one thing. */
export interface Span {
  readonly lane: Lane;
  readonly fromMs: number;
  readonly toMs: number;
  readonly acts: number;
}

/** Longest stretch after an act that still counts as work on the same thing, ms. Ours. */
const STILL_AT_IT_MS = 8000;

const LANE_OF_LEADS: Readonly<Record<LeadSet, Lane>> = {
  ammeter: 'ammeter',
  lamp: 'lamp',
  tester: 'tools',
  drop: 'tools',
};

function laneOf(action: Action, test: Lane): Lane {
  switch (action.type) {
    case 'lens.look':
    case 'chalk.mark':
      return 'look';
    case 'lead.take':
    case 'lead.touch':
    case 'lead.lift':
    case 'lead.lean':
    case 'lead.clamp':
    case 'lead.holster':
      return LANE_OF_LEADS[leadSet(action.lead)];
    case 'range.turn':
      return 'ammeter';
    case 'strip.take':
    case 'strip.hold':
    case 'strip.away':
    case 'strip.hang':
      return 'strip';
    case 'gauge.read':
    case 'tester.volts':
    case 'tester.press':
    case 'tester.discharge':
    case 'drop.feed':
      return 'tools';
    case 'remedy.do':
    case 'bench.setRight':
      return 'remedy';
    case 'prepare.check':
      return 'look';
    case 'sheet.write':
    case 'verdict.write':
    case 'job.handIn':
      return 'paper';
    case 'armature.hold':
    case 'armature.release':
    case 'armature.turn':
      return test;
    default:
      return 'bench';
  }
}

/** The log as stretches of work, in order; gaps between them are time in which nothing was done. */
export function spansOf(entries: readonly Entry[], endMs: number): Span[] {
  const spans: Span[] = [];
  // Turning the armature belongs to the test it is turned for, readings written down on the way included.
  let test: Lane = 'bench';
  for (const [nth, { action, atMs }] of entries.entries()) {
    const lane = laneOf(action, test);
    if (lane === 'ammeter' || lane === 'lamp' || lane === 'strip') test = lane;
    if (action.type === 'armature.lift' || action.type === 'armature.place') test = 'bench';
    const next = entries[nth + 1]?.atMs ?? endMs;
    const toMs = Math.min(next, atMs + STILL_AT_IT_MS);
    const last = spans.at(-1);
    if (last?.lane === lane && last.toMs === atMs)
      spans[spans.length - 1] = { ...last, toMs, acts: last.acts + 1 };
    else spans.push({ lane, fromMs: atMs, toMs, acts: 1 });
  }
  return spans;
}

export interface LaneSum {
  readonly acts: number;
  readonly ms: number;
}

export function sumsOf(spans: readonly Span[]): Readonly<Record<Lane, LaneSum>> {
  const sums = Object.fromEntries(LANES.map((lane) => [lane, { acts: 0, ms: 0 }])) as Record<Lane, LaneSum>;
  for (const { lane, fromMs, toMs, acts } of spans)
    sums[lane] = { acts: sums[lane].acts + acts, ms: sums[lane].ms + toMs - fromMs };
  return sums;
}
