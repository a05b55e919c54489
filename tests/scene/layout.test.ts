import { describe, expect, it } from 'vitest';
import { UNTOUCHED } from '../../src/bench/untouched.ts';
import { leadSpots, metalFor } from '../../src/scene/handling/metal.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { armatureSpots, panelSpots, toolSpots } from '../../src/scene/handling/targets.ts';
import { layOut, type Rect } from '../../src/scene/layout.ts';
import { areaOf, roundOf } from '../../src/scene/shapes.ts';
import { DYNAMO, HOSTS, type HostName, JOB, SAMPLES, situation } from './bench.ts';

const hosts = Object.keys(HOSTS) as HostName[];

function overlap(a: Rect, b: Rect): number {
  const w = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
  return w > 0.5 && h > 0.5 ? w * h : 0;
}

describe.each(hosts)('the bench laid out for a %s', (host) => {
  const [width, height] = HOSTS[host];
  const l = layOut(JOB.armature, width, height);

  it('keeps everything inside the picture', () => {
    const rects = [l.endBox, l.mat, l.stand, l.panel.meter, l.panel.selector, l.panel.lamp, l.panel.flags];
    for (const r of [...rects, ...l.panel.ranges, ...l.panel.holsters, ...Object.values(l.tools)]) {
      expect(r.x).toBeGreaterThanOrEqual(0);
      expect(r.y).toBeGreaterThanOrEqual(0);
      expect(r.x + r.w).toBeLessThanOrEqual(width + 0.5);
      expect(r.y + r.h).toBeLessThanOrEqual(height + 0.5);
      expect(Math.min(r.w, r.h)).toBeGreaterThan(20);
    }
  });

  it('lets nothing of the panel lie over anything else of it', () => {
    const { meter, selector, lamp, flags, ranges, holsters } = l.panel;
    const rects = [meter, selector, lamp, flags, ...ranges, ...holsters];
    for (const [i, a] of rects.entries()) {
      for (const b of rects.slice(i + 1)) expect(overlap(a, b)).toBe(0);
    }
  });

  it('gives every handle at least 24 px and four times the size of its tip', () => {
    for (const seen of [UNTOUCHED, SAMPLES.spaced!, SAMPLES.ground!]) {
      const spots = leadSpots(situation(host, seen));
      for (const handle of spots.filter((spot) => spot.part === 'handle')) {
        const tip = spots.find((spot) => spot.lead === handle.lead && spot.part === 'tip')!;
        expect(areaOf(handle.shape)).toBeGreaterThanOrEqual(4 * areaOf(tip.shape));
        expect(roundOf(handle.shape).r * 2).toBeGreaterThanOrEqual(24);
        expect(roundOf(tip.shape).r * 2).toBeGreaterThanOrEqual(24);
      }
    }
  });

  it('makes everything that is pressed at least 24 px wide', () => {
    const s = situation(host, SAMPLES.placed!);
    for (const { id, shape } of [...panelSpots(s), ...toolSpots(s), ...armatureSpots(s)]) {
      expect(roundOf(shape).r * 2, id).toBeGreaterThanOrEqual(24);
    }
  });
});

describe.each(['desk', 'tablet'] as const)('bars on the front of the commutator on a %s', (host) => {
  it.each([JOB, DYNAMO])('are 24 px apart ($armature.name)', (job) => {
    const s = situation(host, SAMPLES.placed!, job);
    const front = metalFor(s, 'lamp.1')
      .filter((spot) => spot.view === 'side' && spot.place.startsWith('bar:'))
      .map((spot) => roundOf(spot.shape))
      .sort((a, b) => b.r - a.r);
    expect(front[0]!.r * 2).toBeGreaterThanOrEqual(24);
    expect(front.length).toBeGreaterThanOrEqual(job.armature.bars / 2 - 3);
  });
});

describe('the list of touchable things', () => {
  it('names every bar a hand can get to in the end view, and no other while the part lies in the cradle', () => {
    const s = situation('desk', SAMPLES.placed!);
    const ids = allPlaces(s).filter((p) => p.view === 'end' && p.id.startsWith('bar:'));
    expect(ids.length).toBeLessThan(JOB.armature.bars);
    const out = situation('desk', UNTOUCHED);
    const all = allPlaces(out).filter((p) => p.view === 'end' && p.id.startsWith('bar:'));
    expect(all.length).toBe(JOB.armature.bars);
  });

  it('puts the main view first, where a test would press', () => {
    const places = allPlaces(situation('desk', SAMPLES.placed!));
    const bar = places.find((p) => p.id === 'core');
    expect(bar?.view).toBe('side');
  });
});
