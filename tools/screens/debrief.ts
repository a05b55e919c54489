import type { Entry, Sensed } from '../../src/attempt/entry.ts';
import type { Action } from '../../src/bench/action.ts';
import type { Breach } from '../../src/bench/port.ts';
import type { DebriefData } from '../../src/screens/shell.ts';
import { JOBS } from './jobs.ts';

const BEFORE: Sensed = {
  supply: 'on',
  needle: { deflection: 0.33, pegged: false, atRest: true },
  lamp: { glow: 0 },
  pull: 0,
  buzz: 0,
  hum: { level: 8, pitchHz: 100, harshness: 2 },
  growlerHeat: 'cool',
  rotationDeg: 0,
};
const TIP: Breach = {
  interlock: 'tipHeld',
  sentence: 'Lamp probe 1 was held by its bare tip while the circuit was live: that is mains on your hand.',
  critical: true,
};

const ACTS: readonly Action[] = [
  { type: 'lens.look', place: 'riser:4' },
  { type: 'chalk.mark', bar: 2 },
  { type: 'selector.turn', to: 'high' },
  { type: 'lead.take', lead: 'ammeter.1', grip: 'handle' },
  { type: 'lead.touch', lead: 'ammeter.1', place: 'bar:2' },
  { type: 'lead.touch', lead: 'ammeter.2', place: 'bar:3' },
  { type: 'sheet.write', line: { test: 'neighbour', count: 0, readingA: 10.8, rangeA: 30 } },
  { type: 'armature.turn', byDeg: 15.65 },
  {
    type: 'verdict.write',
    verdict: {
      part: 'armature',
      findings: [{ condition: 'badRiserJoint', place: { kind: 'bar', count: 7 } }],
      disposition: 'resolder',
      sure: 0.85,
      because:
        'Neighbouring readings fall to nothing at chalk + 6 and chalk + 7; the strip is still all round.',
    },
  },
  { type: 'job.handIn' },
];

/** A debrief with hand-made marks and readings. */
export function handMadeDebrief(stopped: boolean): DebriefData {
  const job = JOBS[0]!;
  const acts = stopped
    ? [...ACTS.slice(0, 4), { type: 'lead.take', lead: 'lamp.1', grip: 'tip' } as const]
    : ACTS;
  const entries = acts.map((action, n): Entry => {
    const breaches = action.type === 'lead.take' && action.grip === 'tip' ? [TIP] : [];
    return { n, atMs: 14_000 * n, action, outcome: { kind: 'done', breaches }, before: BEFORE };
  });
  return {
    job,
    attempt: {
      format: 'slot-and-riser/attempt',
      version: 1,
      id: 'done',
      mode: job.mode,
      learner: 'A. Learner',
      startedAt: '2026-03-02T08:40:00Z',
      endMs: 1_260_000,
      scenario: {
        format: 'slot-and-riser/scenario',
        version: 1,
        public: { ...job, armature: job.armature.typeId },
        hidden: {
          armature: { faults: [{ kind: 'riserJoint', bar: 9, form: 'bar', ohm: 0.2 }] },
          startRotationDeg: 0,
          seed: 1,
          supplyReference: 'floating',
        },
      },
      entries,
    } as unknown as DebriefData['attempt'],
    marks: {
      earned: 31.5,
      of: 40,
      stoppedBy: stopped ? { entry: 4, breach: TIP } : null,
      marks: [
        mark(
          'cover',
          'procedure',
          'Every bar read',
          6,
          8,
          'You read 17 of 23 bars; a fault at the other six would have been missed.',
          [4, 5, 7],
        ),
        mark(
          'off',
          'procedure',
          'Bench off when not in use',
          4,
          4,
          'Off before the armature was placed, off at the end.',
          [2],
        ),
        mark(
          'proof',
          'procedure',
          'Lamp proved before and after',
          0,
          4,
          'The lamp was not proved again after the ground test, so its dark results count for nothing.',
          [3],
        ),
        mark('cond', 'diagnosis', 'Condition', 10, 10, 'A bad riser joint: that is what it was.', [8]),
        mark(
          'place',
          'diagnosis',
          'Place',
          8,
          8,
          'Seven bars on from your chalk, and the readings could tell that much.',
          [8],
        ),
      ],
    },
    told: [],
    passes: [
      {
        test: 'neighbour',
        caption: 'Neighbouring bars under the front stand',
        own: Array.from({ length: 23 }, (_, bar) =>
          bar > 16 ? null : bar === 6 || bar === 7 ? 0.5 : 10.8 + (bar % 3) * 0.2,
        ),
        sound: Array.from({ length: 23 }, () => 10.8),
        truth: Array.from({ length: 23 }, (_, bar) => (bar === 6 || bar === 7 ? 0.4 : 10.8)),
      },
    ],
  };
}

function mark(
  id: string,
  group: 'procedure' | 'diagnosis',
  title: string,
  earned: number,
  of: number,
  sentence: string,
  entries: readonly number[],
) {
  return { id, group, title, earned, of, sentence, entries };
}
