import { describe, expect, it } from 'vitest';
import type { Place } from '../../src/bench/places.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { hungSpots, toolSpots } from '../../src/scene/handling/targets.ts';
import { HUNG_TOOLS, inside, middle } from '../../src/scene/layout.ts';
import { clipPoint } from '../../src/scene/pose.ts';
import { DECADES, scaleShare } from '../../src/scene/railShape.ts';
import { distanceTo, roundOf } from '../../src/scene/shapes.ts';
import { sampleJob } from '../../tools/scene/samples.ts';
import { at, HOSTS, type HostName, JOB, SAMPLES, situation, TryDesk } from './bench.ts';

const WITH_FRAME = sampleJob('wave23', 'branches');
const hosts = Object.keys(HOSTS) as HostName[];
const press = (desk: TryDesk, id: string) => {
  const spot = allPlaces(desk.situation()).find((each) => each.id === id)!;
  begin(desk, at(spot)).end(at(spot));
};

describe.each(hosts)('tools of the rail on a %s', (host) => {
  it('hang apart from one another, each large enough for a finger', () => {
    const s = situation(host, SAMPLES.rest!);
    const hung = hungSpots(s);
    expect(hung.map(({ id }) => id)).toEqual(HUNG_TOOLS.map((tool) => `tool:${tool}`));
    const all = [...hung, ...toolSpots(s)];
    for (const { id, shape } of hung) {
      const middle = roundOf(shape);
      expect(middle.r * 2, id).toBeGreaterThanOrEqual(24);
      for (const other of all)
        if (other.id !== id) expect(distanceTo(other.shape, middle)).toBeGreaterThan(8);
    }
  });

  it('open what is done with them, hung up or in use', () => {
    for (const seen of [SAMPLES.rest!, SAMPLES.insulation!, SAMPLES.drop!]) {
      const desk = new TryDesk(host, seen);
      for (const tool of HUNG_TOOLS) press(desk, `tool:${tool}`);
      expect(desk.opened).toEqual(HUNG_TOOLS);
      expect(desk.took()).toEqual([]);
    }
  });

  it('show the button of the insulation tester while it is in use, and it is pressed and let go', () => {
    const seen = SAMPLES.insulation!;
    const desk = new TryDesk(host, { ...seen, tester: { ...seen.tester, pressed: false } });
    press(desk, 'tester:button');
    desk.seen = seen;
    press(desk, 'tester:button');
    expect(desk.took()).toEqual([
      { type: 'tester.press', on: true },
      { type: 'tester.press', on: false },
    ]);
    const hungUp = situation(host, SAMPLES.rest!);
    expect(hungSpots(hungUp).some(({ id }) => id === 'tester:button')).toBe(false);
  });

  it('leave lens and chalk free while they are in use', () => {
    for (const seen of [SAMPLES.insulation!, SAMPLES.drop!]) {
      const { layout } = situation(host, seen, WITH_FRAME);
      for (const box of Object.values(layout.instruments))
        for (const tool of [layout.tools.lens, layout.tools.chalk])
          expect(inside(box, middle(tool), Math.min(tool.w, tool.h) / 2 - 4)).toBe(false);
    }
  });

  it('have their clips on the metal they touch, and none on metal out of sight', () => {
    const s = situation(host, SAMPLES.insulation!, WITH_FRAME);
    for (const place of ['field:case', 'field:brush1'] as const) {
      const spot = allPlaces(s).find(({ id }) => id === place)!;
      expect(clipPoint(s, place)).toMatchObject({ x: spot.x, y: spot.y });
    }
    expect(clipPoint(s, 'bar:3')).toBeNull();
    const free = situation(host, SAMPLES.rest!);
    const bar = clipPoint(free, 'bar:3')!;
    const seen = allPlaces(free).find(({ id, view }) => id === 'bar:3' && view === 'end')!;
    expect(Math.hypot(bar.x - seen.x, bar.y - seen.y)).toBeLessThan(free.layout.end.comm * 0.4);
    expect(clipPoint(free, 'field:case')).toBeNull();
  });

  it('have their clips on the main view of an armature in the cradle, where it shows the metal from in front', () => {
    const s = situation(host, SAMPLES.placed!);
    const { side, sideBox } = s.layout;
    const seen = allPlaces(s).filter(({ id, view, r }) => id.startsWith('bar:') && view === 'side' && r > 8);
    expect(seen.length > 0).toBe(side !== null);
    for (const { id, x, y, r } of seen) {
      const clip = clipPoint(s, id as Place)!;
      expect(Math.abs(clip.y - y)).toBeLessThan(r);
      expect(Math.abs(clip.x - x)).toBeLessThan(side!.x.commRight - side!.x.commLeft);
    }
    if (sideBox) expect(inside(sideBox, clipPoint(s, 'shaft')!)).toBe(true);
  });
});

describe('a job without such tools', () => {
  it('has none on the rail but brush and iron', () => {
    const s = situation('desk', SAMPLES.rest!, { ...JOB, tests: ['look', 'ground'] });
    expect(hungSpots(s).map(({ id }) => id)).toEqual(['tool:remedies']);
  });
});

describe('the scale of an instrument', () => {
  it.each(['tester', 'drop'] as const)('of the %s rises with the reading, decade by decade', (which) => {
    const [least, most] = DECADES[which];
    expect(scaleShare(which, null)).toBeLessThan(0);
    expect(scaleShare(which, 10 ** least)).toBeCloseTo(0);
    expect(scaleShare(which, 10 ** most)).toBeCloseTo(1);
    expect(scaleShare(which, 10) - scaleShare(which, 1)).toBeCloseTo(1 / (most - least));
    expect(scaleShare(which, 0)).toBeCloseTo(0);
    expect(scaleShare(which, 1e6)).toBeLessThanOrEqual(1.04);
  });
});
