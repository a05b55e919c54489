import { MAT_PARTS, RANGES_A } from '../../bench/action.ts';
import { BENCH_LEADS } from '../benchLeads.ts';
import { HUNG_TOOLS, RAIL_TOOLS } from '../layout.ts';
import { selectorMark } from '../panel/selectorShape.ts';
import { putBackTab, slipShape } from '../partShape.ts';
import { forwardPart, holsterOf, type Situation } from '../pose.ts';
import { faceOf, isInUse } from '../railShape.ts';
import type { Shape } from '../shapes.ts';
import type { Spot } from './spot.ts';
import { stripShapes } from './stripSpots.ts';

export function holsterSpots(s: Situation): Spot[] {
  return BENCH_LEADS.map((lead) => ({
    id: `holster:${lead}`,
    view: 'panel',
    shape: { kind: 'box', ...holsterOf(s.layout, lead) },
  }));
}

export function panelSpots(s: Situation): Spot[] {
  const { panel } = s.layout;
  const r = Math.max(18, Math.min(26, panel.selector.w * 0.17));
  return [
    ...(['off', 'low', 'high'] as const).map((to): Spot => {
      const p = selectorMark(panel.selector, to);
      return { id: `selector:${to}`, view: 'panel', shape: { kind: 'circle', ...p, r } };
    }),
    ...RANGES_A.map(
      (range, i): Spot => ({
        id: `range:${range}`,
        view: 'panel',
        shape: { kind: 'box', ...panel.ranges[i as 0 | 1 | 2 | 3] },
      }),
    ),
  ];
}

export function toolSpots(s: Situation): Spot[] {
  return RAIL_TOOLS.flatMap((tool) => {
    const shapes: Shape[] = tool === 'strip' ? stripShapes(s) : [{ kind: 'box', ...s.layout.tools[tool] }];
    return shapes.map((shape): Spot => ({ id: tool, view: 'bench', shape }));
  });
}

/** Tools that open what is done with them, hung up or in use, and the button of the insulation tester. */
export function hungSpots({ layout, seen }: Situation): Spot[] {
  return HUNG_TOOLS.flatMap((tool): Spot[] => {
    const out = (tool === 'tester' || tool === 'drop') && isInUse(seen, tool);
    const box = out ? layout.instruments[tool] : layout.hung[tool];
    if (!box) return [];
    const whole: Spot = { id: `tool:${tool}`, view: 'bench', shape: { kind: 'box', ...box } };
    if (!out || tool !== 'tester') return [whole];
    return [{ id: 'tester:button', view: 'bench', shape: { kind: 'circle', ...faceOf(box).button } }, whole];
  });
}

/** Where the armature is taken to be turned, and where it is taken to be lifted. */
export function armatureSpots(s: Situation): Spot[] {
  const { layout } = s;
  const g = layout.side;
  const spots: Spot[] = [];
  const inCradle = s.seen.cradle === 'armature';
  if (inCradle && g) {
    const lift = liftGrip(s);
    if (lift) spots.push({ id: 'armature:lift', view: 'side', shape: lift });
    const w = g.x.commRight - g.x.windLeft;
    spots.push({
      id: 'core:turn',
      view: 'side',
      shape: { kind: 'box', x: g.x.windLeft, y: g.axisY - g.r.core, w, h: g.r.core * 1.7 },
    });
  }
  if (inCradle && forwardPart(s) === null) {
    const e = layout.end;
    spots.push({ id: 'core:turn', view: 'end', shape: { kind: 'circle', x: e.x, y: e.y, r: e.core * 1.04 } });
  }
  if (forwardPart(s) === null || layout.mode === 'narrow') {
    spots.push({ id: 'mat', view: 'bench', shape: { kind: 'box', ...layout.mat } });
  }
  // On a phone cradle and stand are in the end view, which a part that lies forward covers.
  if (g || forwardPart(s) === null) {
    spots.push({ id: 'cradle', view: g ? 'side' : 'end', shape: cradleShape(s) });
    spots.push({ id: 'stand', view: 'bench', shape: { kind: 'box', ...layout.stand } });
  }
  return spots;
}

/** What takes a part up, puts it back, and keeps its brushes apart. */
export function partSpots(s: Situation): Spot[] {
  const { layout, seen } = s;
  const forward = forwardPart(s);
  const free = forward === null || layout.mode === 'narrow';
  const stands = MAT_PARTS.flatMap((part): Spot[] => {
    const stand = layout.partStands[part];
    if (!stand || !free || seen.mat[part] !== 'away') return [];
    return [{ id: `part:${part}`, view: 'bench', shape: { kind: 'box', ...stand } }];
  });
  if (forward === null) return stands;
  const tab: Spot = {
    id: 'part:putBack',
    view: 'bench',
    shape: { kind: 'box', ...putBackTab(layout.board) },
  };
  const place = layout.mode === 'narrow' ? layout.partStands[forward] : undefined;
  // On a phone the part's empty place says the same as the tab.
  const back: Spot[] = place ? [tab, { ...tab, shape: { kind: 'box', ...place } }] : [tab];
  const slip: Spot = { id: 'brushes', view: 'bench', shape: slipShape(layout.board) };
  return forward === 'fieldFrame' ? [...stands, ...back, slip] : [...stands, ...back];
}

/** The drive end of the shaft, by which two hands lift the armature out. */
export function liftGrip(s: Situation): Shape | null {
  const g = s.layout.side;
  if (!g) return null;
  const h = Math.max(44, g.r.shaft * 2.4);
  const w = Math.max(44, g.x.windLeft - g.x.shaftLeft + 6);
  return { kind: 'box', x: g.x.windLeft - w, y: g.axisY - h / 2, w, h };
}

export function cradleShape(s: Situation): Shape {
  const g = s.layout.side;
  if (!g) return { kind: 'circle', x: s.layout.end.x, y: s.layout.end.y, r: s.layout.end.core };
  return {
    kind: 'box',
    x: g.x.coreLeft,
    y: g.axisY - g.r.core * 0.5,
    w: g.x.coreRight - g.x.coreLeft,
    h: g.r.core * 1.4,
  };
}
