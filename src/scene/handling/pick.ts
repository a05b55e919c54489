import { RANGES_A, type Selector } from '../../bench/action.ts';
import type { BenchLead } from '../benchLeads.ts';
import { type HungTool, inside, RIM } from '../layout.ts';
import { selectorShape } from '../panel/selectorShape.ts';
import { forwardPart } from '../pose.ts';
import { distanceTo } from '../shapes.ts';
import { type Desk, disarm, far, forgiveness, type Gesture, type Pointer } from './desk.ts';
import { LeadDrag, leadAim, putLead, TipPress } from './leadDrag.ts';
import { leadSpots } from './metal.ts';
import { DONE, NOTHING, SelectorPress } from './panelPress.ts';
import { pressPart } from './partPress.ts';
import { nearest, type Spot } from './spot.ts';
import { StripDrag, stripPlaceAt } from './stripDrag.ts';
import { armatureSpots, hungSpots, panelSpots, partSpots, toolSpots } from './targets.ts';
import { ArmatureDrag, ToolDrag, toolAim, useTool } from './toolDrag.ts';
import { TurnDrag } from './turn.ts';

/** What a press at a point takes hold of, nearest to the eye first. */
export function begin(desk: Desk, p: Pointer): Gesture {
  return (
    onCloseUp(desk, p) ??
    placeArmed(desk, p) ??
    onLead(desk, p) ??
    onPanel(desk, p) ??
    onStanding(desk, p) ??
    onArmature(desk, p) ??
    NOTHING
  );
}

/** A press on what lens or gauge shows puts it out of the way; another, on the small round it then is, brings it back. */
function onCloseUp(desk: Desk, p: Pointer): Gesture | null {
  const { layout, seen } = desk.situation();
  if ((seen.look ?? seen.gauge) === null) return null;
  const round = desk.ui.closeUpShut ? layout.aside : layout.lens;
  if (far(p.at, round) > round.r + RIM) return null;
  desk.ui.closeUpShut = !desk.ui.closeUpShut;
  return DONE;
}

/** A thing picked by a click is put where the next click falls. */
function placeArmed(desk: Desk, p: Pointer): Gesture | null {
  const { armed } = desk.ui;
  if (!armed) return null;
  if (armed.kind === 'lead') {
    const aim = leadAim(desk, armed.lead, [p.at], forgiveness(p.kind) * 0.7);
    if (!aim) return leaveHovering(desk, p, armed.lead);
    if (desk.situation().seen.leads[armed.lead].touches !== null && 'place' in aim) {
      if (!desk.act({ type: 'lead.lift', lead: armed.lead }, p.at)) return DONE;
    }
    if (putLead(desk, armed.lead, aim, p.at)) disarm(desk.ui);
    return DONE;
  }
  if (armed.kind === 'strip') return placeStrip(desk, p);
  const spot = toolAim(desk, armed.kind, p.at, forgiveness(p.kind) * 0.5);
  if (!spot) return null;
  if (useTool(desk, armed.kind, spot, p.at) && armed.kind === 'chalk') disarm(desk.ui);
  return DONE;
}

/** Off the metal a picked lead stays where it is; what else lies under the press is taken with the other hand. */
function leaveHovering(desk: Desk, p: Pointer, lead: BenchLead): Gesture {
  const other = onPanel(desk, p) ?? onStanding(desk, p) ?? onLead(desk, p, lead);
  disarm(desk.ui);
  return other ?? DONE;
}

function placeStrip(desk: Desk, p: Pointer): Gesture | null {
  const place = stripPlaceAt(desk.situation(), p.at);
  if (!place) return null;
  desk.act({ type: 'strip.hold', ...place }, p.at);
  disarm(desk.ui);
  return DONE;
}

function onLead(desk: Desk, p: Pointer, except: BenchLead | null = null): Gesture | null {
  const spots = leadSpots(desk.situation()).filter((spot) => spot.lead !== except);
  const margin = p.kind === 'touch' ? 10 : 3;
  const handles = spots.filter((spot) => spot.part === 'handle');
  const { leads } = desk.situation().seen;
  // A lead that is out lies over those that hang in their holsters.
  const out = handles.filter(({ lead }) => leads[lead].at !== 'holster');
  const handle = nearest(out, p.at, margin) ?? nearest(handles, p.at, margin);
  if (handle) return new LeadDrag(desk, handle.lead, p);
  const tip = nearest(
    spots.filter((spot) => spot.part === 'tip'),
    p.at,
    1,
  );
  return tip && tipIsFree(desk, p, tip) ? new TipPress(desk, tip.lead, p) : null;
}

/** The few pixels round a touching tip belong to the tip; further off the press is meant for the part. */
function tipIsFree(desk: Desk, p: Pointer, tip: Spot & { readonly lead: string }): boolean {
  return desk.situation().layout.mode !== 'narrow' || distanceTo(tip.shape, p.at) === 0;
}

function onPanel(desk: Desk, p: Pointer): Gesture | null {
  const s = desk.situation();
  const spot = nearest(panelSpots(s), p.at, 6);
  if (spot?.id.startsWith('range:')) {
    const to = RANGES_A.find((range) => `range:${range}` === spot.id)!;
    desk.act({ type: 'range.turn', to }, p.at);
    return DONE;
  }
  if (spot) return new SelectorPress(desk, p, spot.id.slice('selector:'.length) as Selector);
  const boss = selectorShape(s.layout.panel.selector);
  return far(p.at, boss) < boss.r * 1.2 ? new SelectorPress(desk, p, null) : null;
}

/** Whatever stands by to be taken up: parts, tools that open what is done with them, strip, lens and chalk. */
function onStanding(desk: Desk, p: Pointer): Gesture | null {
  const s = desk.situation();
  const margin = p.kind === 'touch' ? 12 : 4;
  const [part, hung, tool] = [partSpots(s), hungSpots(s), toolSpots(s)];
  const spot = nearest([...part, ...hung, ...tool], p.at, margin);
  // What lies under a part brought forward is covered by it.
  if (spot === null) return forwardPart(s) !== null && inside(s.layout.board, p.at) ? DONE : null;
  if (part.includes(spot)) return pressPart(desk, p, spot.id);
  if (hung.includes(spot)) return pressHung(desk, p, spot.id);
  return spot.id === 'strip' ? new StripDrag(desk, p) : new ToolDrag(desk, spot.id as 'lens' | 'chalk', p);
}

/** A press on a tool of the rail opens what is done with it, as a press on its name under the picture does. */
function pressHung(desk: Desk, p: Pointer, id: string): Gesture {
  if (id === 'tester:button') {
    desk.act({ type: 'tester.press', on: !desk.situation().seen.tester.pressed }, p.at);
  } else desk.openTool(id.slice('tool:'.length) as HungTool);
  if (id === 'tool:gauges') desk.ui.closeUpShut = false;
  return DONE;
}

function onArmature(desk: Desk, p: Pointer): Gesture | null {
  const s = desk.situation();
  const spots = armatureSpots(s);
  const hit = (id: string, margin = 0) =>
    spots.find((spot) => spot.id === id && distanceTo(spot.shape, p.at) <= margin);
  if (s.seen.cradle === 'empty') {
    return hit('mat') || hit('cradle') || onEndArmature(desk, p) ? new ArmatureDrag(desk, p) : null;
  }
  const turn = hit('core:turn');
  if (turn) return new TurnDrag(desk, turn.view === 'end' ? 'end' : 'side', p);
  if (hit('armature:lift')) return new ArmatureDrag(desk, p);
  if (hit('mat')) {
    desk.act({ type: 'armature.lift' }, p.at);
    return DONE;
  }
  return null;
}

function onEndArmature(desk: Desk, p: Pointer): boolean {
  const s = desk.situation();
  const { mode, end } = s.layout;
  return mode === 'narrow' && forwardPart(s) === null && far(p.at, end) < end.core;
}
