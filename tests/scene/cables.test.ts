import { describe, expect, it } from 'vitest';
import { barAngleDeg, canReach } from '../../src/bench/geometry.ts';
import type { LeadView } from '../../src/bench/observation.ts';
import { barPlace } from '../../src/bench/places.ts';
import { BENCH_LEADS } from '../../src/scene/benchLeads.ts';
import { cableOf } from '../../src/scene/cables.ts';
import { inside, middle } from '../../src/scene/layout.ts';
import { cableEnd, leadPose } from '../../src/scene/pose.ts';
import { JOB, SAMPLES, situation } from './bench.ts';

const touching = (bar: number): LeadView => ({
  at: 'hand',
  grip: 'handle',
  touches: barPlace(bar),
  stationDeg: barAngleDeg(JOB.armature, bar, 0),
  leaning: false,
});

describe('cables on a phone', () => {
  it('leave the bars free, whichever bar a lead is on, and end where they come out of the panel', () => {
    for (const lead of BENCH_LEADS) {
      for (let bar = 0; bar < JOB.armature.bars; bar++) {
        const seen = { ...SAMPLES.placed!, rotationDeg: 0 };
        const s = situation('phone', { ...seen, leads: { ...seen.leads, [lead]: touching(bar) } });
        const { end, panel } = s.layout;
        const cable = cableOf(s, lead, leadPose(s, lead));
        const far = cable.map(({ x, y }) => Math.hypot(x - end.x, y - end.y));
        expect(Math.min(...far), `${lead} on ${bar}`).toBeGreaterThan(end.comm);
        expect(cable.at(-1)).toEqual(cableEnd(s, lead));
        expect(inside(panel.frame, cable.at(-1)!)).toBe(true);
      }
    }
  });
});

describe.each(['desk', 'tablet'] as const)('cables on a %s', (host) => {
  it('hang across neither the end view nor the words on the mat, whichever bar in reach a lead is on', () => {
    for (const lead of BENCH_LEADS) {
      for (let bar = 0; bar < JOB.armature.bars; bar++) {
        if (!canReach(barAngleDeg(JOB.armature, bar, 0))) continue;
        const seen = { ...SAMPLES.placed!, rotationDeg: 0 };
        const s = situation(host, { ...seen, leads: { ...seen.leads, [lead]: touching(bar) } });
        const { end, mat } = s.layout;
        const cable = cableOf(s, lead, leadPose(s, lead));
        const far = cable.map(({ x, y }) => Math.hypot(x - end.x, y - end.y));
        expect(Math.min(...far), `${lead} on ${bar}`).toBeGreaterThan(end.core);
        const words = { x: middle(mat).x - 86, y: middle(mat).y - 18, w: 172, h: 36 };
        expect(cable.some((p) => inside(words, p))).toBe(false);
        expect(cable.at(-1)).toEqual(cableEnd(s, lead));
      }
    }
  });
});
