import type { Page } from 'playwright-core';
import type { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { Layout, Rect } from '../../src/scene/layout.ts';
import { faceOf } from '../../src/scene/railShape.ts';
import { sampleJob, samples } from '../../tools/scene/samples.ts';
import { launch, launchWithGraphics } from './support/chromium.ts';
import { apart, kept, openScenePage, pictureOf } from './support/pictures.ts';
import './support/provided.ts';
import type { DrawOneAfterAnother, Moment } from './support/scenePage.ts';

declare const drawOneAfterAnother: DrawOneAfterAnother;

/** Share of pixels that may differ from the kept picture: smoothing of edges differs from browser to browser. */
const TOLERANCE = 0.01;

let browser: Awaited<ReturnType<typeof launch>>;
let page: Page;
let draw: (moment: Moment, where: (l: Layout) => Rect) => Promise<PNG>;

beforeAll(async () => {
  browser = await launch(inject('chromium'));
  page = await browser.newPage({ viewport: { width: 640, height: 470 } });
  await openScenePage(page);
  draw = (moment, where) => pictureOf(page, moment, where);
});
afterAll(() => browser.close());

const round = ({ x, y }: { x: number; y: number }, r: number): Rect => ({
  x: x - r,
  y: y - r,
  w: 2 * r,
  h: 2 * r,
});
const armature = ({ sideBox }: Layout): Rect => ({ ...sideBox!, h: sideBox!.h * 0.62 });
const end = (l: Layout): Rect => l.endBox;
/** The filament and the glass round it. */
const lamp = ({ panel: { lamp: b } }: Layout): Rect => ({
  x: b.x + b.w * 0.18,
  y: b.y + b.h * 0.14,
  w: b.w * 0.64,
  h: b.h * 0.36,
});
/** The scale and what the needle shows of itself, without the hood it comes out of. */
const meter = ({ panel: { meter: b } }: Layout): Rect => ({ ...b, h: b.h * 0.68 });
const meterEnd = (l: Layout): Rect => ({
  ...meter(l),
  x: l.panel.meter.x + l.panel.meter.w * 0.6,
  w: l.panel.meter.w * 0.4,
});
const board = (l: Layout): Rect => l.board;
const lens = (l: Layout): Rect => round(l.lens, l.lens.r);
/** Scale and needle of an instrument of the rail. */
const dial = (box: Rect): Rect => {
  const { pivot, length } = faceOf(box);
  return { x: pivot.x - length, y: pivot.y - length, w: 2 * length, h: length + 4 };
};
const hung = ({ hung: { tester, remedies } }: Layout): Rect => ({
  ...tester!,
  w: remedies!.x + remedies!.w - tester!.x,
});
const needle = (deflection: number): Moment => ({
  state: 'spaced',
  but: { needle: { deflection, pegged: deflection > 1, atRest: true } },
});

const TESTER = {
  at: 'rail',
  volt: 250,
  pressed: true,
  over: false,
  charged: true,
  discharged: false,
} as const;

/** What each picture is of, and the same place when what it shows is otherwise. */
const PICTURES: readonly {
  readonly name: string;
  readonly of: Moment;
  readonly where: (l: Layout) => Rect;
  readonly otherwise: Moment;
}[] = [
  { name: 'part', of: { state: 'placed' }, where: armature, otherwise: { state: 'placed', part: 'lap24' } },
  {
    name: 'part-end',
    of: { state: 'placed' },
    where: end,
    otherwise: { state: 'placed', but: { rotationDeg: 11 } },
  },
  { name: 'fault-riser', of: { state: 'riser' }, where: lens, otherwise: { state: 'charred' } },
  {
    name: 'fault-bridge',
    of: { state: 'bridge' },
    where: lens,
    otherwise: { state: 'bridge', but: { look: { place: 'bar:17', sees: [] } } },
  },
  {
    name: 'gauge-undercut',
    of: { state: 'undercut' },
    where: lens,
    otherwise: { state: 'undercut', but: { gauge: { gauge: 'undercut', brush: null, mm: 1.35 } } },
  },
  {
    name: 'gauge-diameter',
    of: { state: 'diameter' },
    where: lens,
    otherwise: { state: 'diameter', but: { gauge: { gauge: 'diameter', brush: null, mm: 33.1 } } },
  },
  { name: 'lamp-dark', of: { state: 'placed' }, where: lamp, otherwise: { state: 'dull' } },
  { name: 'lamp-lit', of: { state: 'prove' }, where: lamp, otherwise: { state: 'ground' } },
  { name: 'needle', of: needle(0.62), where: meter, otherwise: needle(0.52) },
  { name: 'needle-pegged', of: needle(1.03), where: meterEnd, otherwise: needle(0.96) },
  { name: 'strip-still', of: { state: 'strip' }, where: armature, otherwise: { state: 'snapped' } },
  { name: 'strip-buzzing', of: { state: 'buzz' }, where: armature, otherwise: { state: 'strip' } },
  {
    name: 'field-frame',
    of: { state: 'frame' },
    where: board,
    otherwise: { state: 'frame', but: { brushesApart: true } },
  },
  {
    name: 'insulation-tester',
    of: { state: 'insulation' },
    where: ({ instruments }) => dial(instruments.tester!),
    otherwise: {
      state: 'insulation',
      but: { tester: { ...TESTER, megohms: 0.02 } },
    },
  },
  {
    name: 'millivolt-drop',
    of: { state: 'drop' },
    where: ({ instruments }) => instruments.drop!,
    otherwise: {
      state: 'drop',
      but: { drop: { at: 'rail', feed: null, feedA: 0, millivolts: null, over: false } },
    },
  },
  {
    name: 'rail',
    of: { state: 'rest' },
    where: hung,
    otherwise: { state: 'insulation' },
  },
  { name: 'brush-plate', of: { state: 'plate' }, where: board, otherwise: { state: 'frame' } },
];

describe('the bench looks as it did', () => {
  it.each(PICTURES)('$name', async ({ name, of, where, otherwise }) => {
    const drawn = await draw(of, where);
    const before = kept(name, drawn);
    const same = apart(drawn, before);
    const changed = apart(await draw(otherwise, where), before);
    if (process.env.PICTURES)
      console.log(`${name}: ${same.toFixed(4)} from its picture, ${changed.toFixed(4)} when otherwise`);
    expect(same).toBeLessThanOrEqual(TOLERANCE);
    expect(changed).toBeGreaterThan(TOLERANCE);
  });
});

describe('in a browser that hands out noise instead of px', () => {
  it('the part looks as it did', async () => {
    const noisy = await browser.newPage({ viewport: { width: 640, height: 470 } });
    await noisy.addInitScript(() => {
      CanvasRenderingContext2D.prototype.getImageData = (_x: number, _y: number, w: number, h: number) =>
        new ImageData(
          Uint8ClampedArray.from({ length: 4 * w * h }, (_, i) => (i * 7919) % 256),
          w,
          h,
        );
    });
    await openScenePage(noisy);
    const drawn = await pictureOf(noisy, { state: 'placed' }, armature);
    await noisy.close();
    expect(apart(drawn, kept('part', drawn))).toBeLessThanOrEqual(TOLERANCE);
  });
});

describe('a bench on which something changes', () => {
  it('is drawn again only there, and looks as if all of it had been', async () => {
    const states = Object.keys(samples(sampleJob('wave23', 'branches')));
    // There and back, so that everything comes and goes.
    const moments = [...states, ...states.toReversed(), 'spaced', 'ground'].map((state) => ({ state }));
    expect(await page.evaluate((wanted) => drawOneAfterAnother(wanted), moments)).toEqual([]);
  });
});

describe('a graphics processor', () => {
  it('draws the bench as the plain canvas does, another range and a stopped bench too', async () => {
    const other = await launchWithGraphics(inject('chromium'));
    try {
      const its = await other.newPage({ viewport: { width: 640, height: 470 } });
      await openScenePage(its);
      const whole = ({ width, height }: Layout): Rect => ({ x: 0, y: 0, w: width, h: height });
      for (const of of [
        needle(0.62),
        { state: 'buzz' },
        { state: 'drop' },
        { state: 'stopped' },
      ] as Moment[]) {
        const drawn = await pictureOf(its, { ...of, drawing: 'webgl' }, whole);
        expect(apart(drawn, await draw(of, whole)), of.state).toBeLessThan(0.04);
      }
    } finally {
      await other.close();
    }
  });
});
