import { describe, expect, it } from 'vitest';
import { wrapDeg } from '../../src/bench/geometry.ts';
import { barPlace, type Place } from '../../src/bench/places.ts';
import { clipPoint, cordRun, inEndView } from '../../src/scene/clips.ts';
import { begin } from '../../src/scene/handling/pick.ts';
import { allPlaces } from '../../src/scene/handling/places.ts';
import { hungSpots, toolSpots } from '../../src/scene/handling/targets.ts';
import { HUNG_TOOLS, inside, middle } from '../../src/scene/layout.ts';
import { endAngleAt } from '../../src/scene/project.ts';
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
      const clip = clipPoint(s, place)!;
      expect(Math.hypot(clip.x - spot.x, clip.y - spot.y)).toBeLessThan(8);
    }
    expect(clipPoint(s, 'bar:3')).toBeNull();
    const free = situation(host, SAMPLES.rest!);
    expect(clipPoint(free, 'field:case')).toBeNull();
    const bar = clipPoint(free, 'bar:3')!;
    const atEnd = inEndView(free, 'bar:3', 0);
    const seen = allPlaces(free).find(({ id, view }) => id === 'bar:3' && view === 'end')!;
    expect(Math.hypot(atEnd.x - seen.x, atEnd.y - seen.y)).toBeLessThan(free.layout.end.comm * 0.4);
    if (free.layout.side) expect(inside(free.layout.mat, bar)).toBe(true);
    else expect(bar).toMatchObject({ x: atEnd.x, y: atEnd.y });
  });

  it('lead their cables to no bar across the others, however the armature lies', () => {
    for (const cradle of ['empty', 'armature'] as const) {
      const s = situation(host, { ...SAMPLES.placed!, cradle });
      const { side, end, rail, mat } = s.layout;
      const from = { x: side ? 100 : rail.x + 5, y: side ? mat.y + mat.h - 20 : rail.y + rail.h / 2 };
      for (let bar = 0; bar < s.part.bars; bar++) {
        const { front, behind } = cordRun(s, from, barPlace(bar), 0)!;
        if (side && clipPoint(s, barPlace(bar))!.behind) {
          expect(behind).toHaveLength(2);
          if (cradle === 'armature')
            for (const { x, y } of front)
              expect(x > side.x.commLeft && y < side.axisY + side.r.comm).toBe(false);
        } else expect(behind).toEqual([]);
        if (side) continue;
        const bearing = inEndView(s, barPlace(bar), 0).bearingDeg;
        for (const { x, y } of front) {
          const aside = Math.abs(wrapDeg(endAngleAt(end, x, y) - bearing)) > 12;
          expect(aside && Math.hypot(x - end.x, y - end.y) < end.riser).toBe(false);
        }
      }
    }
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
