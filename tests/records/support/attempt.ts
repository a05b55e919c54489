import { readFileSync } from 'node:fs';
import type { Marks } from '../../../src/assess/mark.ts';
import { ATTEMPT_FORMAT, type Attempt, type Entry } from '../../../src/attempt/entry.ts';
import type { Action } from '../../../src/bench/action.ts';
import type { UnsignedRecord } from '../../../src/records/recordRules.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';

const scenario = JSON.parse(readFileSync('scenarios/q-0a6d.json', 'utf8')) as Scenario;

const SENSED: Entry['before'] = {
  supply: 'on',
  needle: { deflection: 0.4325, pegged: false, atRest: true },
  lamp: { glow: 0 },
  pull: 0,
  buzz: 0,
  hum: { level: 8, pitchHz: 100, harshness: 2 },
  growlerHeat: 'cool',
  rotationDeg: 15,
};

const ACTIONS: readonly Action[] = [
  { type: 'armature.place' },
  { type: 'lens.look', place: 'bar:3' },
  { type: 'chalk.mark', bar: 3 },
  { type: 'selector.turn', to: 'high' },
  { type: 'lead.take', lead: 'ammeter.1', grip: 'handle' },
  { type: 'armature.turn', byDeg: 15 },
  { type: 'sheet.write', line: { test: 'neighbour', count: 2, readingA: 4.2, rangeA: 15 } },
];

/** An attempt as it might lie in the store, `entries` long. */
export function attemptOf(id: string, entries = 40): Attempt {
  return {
    format: ATTEMPT_FORMAT,
    version: 1,
    id,
    mode: 'assessed',
    learner: 'T. Okafor',
    startedAt: '2026-03-02T08:30:00.000Z',
    scenario,
    entries: Array.from({ length: entries }, (_, n) => entryOf(n)),
    endMs: entries * 1500,
  };
}

function entryOf(n: number): Entry {
  return {
    n,
    atMs: n * 1500,
    action: ACTIONS[n % ACTIONS.length]!,
    outcome: { kind: 'done', breaches: [] },
    before: { ...SENSED, rotationDeg: (n * 15) % 360 },
  };
}

export const MARKS: Marks = {
  marks: [
    {
      id: 'groundPass',
      group: 'procedure',
      title: 'Ground test at every bar',
      earned: 6.5,
      of: 10,
      sentence: '15 of 24 bars were tried.',
      entries: [12, 14],
    },
    {
      id: 'condition',
      group: 'diagnosis',
      title: 'Condition of the part',
      earned: 20,
      of: 20,
      sentence: 'Sound, and found so.',
      entries: [39],
    },
  ],
  earned: 26.5,
  of: 30,
  stoppedBy: null,
};

export const STOPPED: Marks = {
  ...MARKS,
  stoppedBy: {
    entry: 20,
    breach: { interlock: 'tipHeld', sentence: 'A live tip was held in the hand.', critical: true },
  },
};

/** A record that may be signed, over attempts with the seals given. */
export function recordOver(
  evidence: readonly { readonly attempt: string; readonly seal: string; readonly marks?: Marks }[],
): UnsignedRecord {
  return {
    format: 'slot-and-riser/assessor-record',
    version: 1,
    id: 'r-1',
    learner: {
      name: 'T. Okafor',
      identifiedBy: 'Known to the assessor',
      declaration: { text: 'This is my own work.', at: '2026-03-02T10:00:00.000Z' },
    },
    evidence: evidence.map(({ attempt, seal, marks = MARKS }) => ({
      attempt,
      seal,
      jobId: 'q-0a6d',
      job: 'Dynamo, canal maintenance boat',
      startedAt: '2026-03-02T08:30:00.000Z',
      mode: 'assessed',
      marks,
      rubricChanges: [],
      replay: { agreed: true, sentence: 'Played again, the log gave the same readings.' },
    })),
    changes: [
      {
        attempt: evidence[0]?.attempt ?? '',
        mark: 'groundPass',
        from: 6.5,
        to: 8,
        reason: 'The other nine bars were tried under my eyes on the real bench.',
        at: '2026-03-02T10:05:00.000Z',
      },
    ],
    remarks: [{ at: '2026-03-02T10:06:00.000Z', text: 'Kept the leads tidy.', about: null }],
    adjustments: ['Job card read aloud.'],
    supervisedBy: 'M. Hale',
    criteria: {
      set: 'Workshop criteria',
      judgements: [{ criterion: 'c-1', title: 'Tests safely', marks: ['groundPass'], met: 'met', note: '' }],
    },
    rulesOfEvidence: { validity: true, sufficiency: true, authenticity: true, currency: true },
    outcome: 'competent',
    assessor: 'R. Lindqvist',
  };
}
