import type { RangeA } from '../../bench/action.ts';
import type { Observation } from '../../bench/observation.ts';
import type { ArmatureView } from '../../scenario/public/job.ts';
import { growlerStage } from '../growlerStage.ts';
import type { HungTool, Layout, Rect } from '../layout.ts';
import {
  paintCoreFace,
  paintLeftShaft,
  paintRightShaft,
  paintShading,
  type Shading,
} from '../paint/armatureStills.ts';
import { paintChalk, paintNumber } from '../paint/barMarks.ts';
import {
  paintBarFace,
  paintCommutatorDisc,
  paintCoreDisc,
  paintRiserFace,
  paintShaftEnd,
} from '../paint/discs.ts';
import { paintLight, paintOutOfReach } from '../paint/endDiscs.ts';
import { paintBlocks, paintEndLabels, paintJawWords, paintMatWord } from '../paint/endView.ts';
import { paintFlags } from '../paint/flags.ts';
import { paintGrowlerEnd } from '../paint/growlerEnd.ts';
import { paintGrowlerBack, paintGrowlerFront } from '../paint/growlerSide.ts';
import { paintHungTool } from '../paint/hungTools.ts';
import { paintGlass, paintHalo, paintSocket } from '../paint/lamp.ts';
import { paintMeterFace, paintMeterGlass } from '../paint/meterFace.ts';
import { paintAmmeterLead, paintCable, paintClamp, paintLampLead } from '../paint/probes.ts';
import { paintRangePlate } from '../paint/rangePlate.ts';
import { paintRoom, paintVeil } from '../paint/room.ts';
import { paintLever, paintSelectorPlate } from '../paint/selector.ts';
import { paintSkin } from '../paint/skin.ts';
import { paintStrip } from '../paint/strip.ts';
import {
  paintChalkTool,
  paintGrommets,
  paintHolsters,
  paintLensTool,
  paintRailFittings,
  paintStand,
} from '../paint/tools.ts';
import type { PrintedScale } from '../panel/meterScale.ts';
import { disc, lettered, type Pen } from '../pen.ts';
import { grommets, type LeadBuild } from '../pose.ts';
import type { EndGeometry, SideGeometry } from '../project.ts';
import type { SkinPlan } from '../skinPlan.ts';

type Lettering = { readonly lettering: boolean };
type Sized = { readonly w: number; readonly h: number };
type Laid = { readonly layout: Layout };
type Turned = { readonly part: ArmatureView; readonly g: EndGeometry };
type Face = { readonly part: ArmatureView; readonly radius: number; readonly shaft: number };
type Shaft = { readonly g: SideGeometry; readonly from: number; readonly to: number };
type Bulb = Lettering & { readonly box: Rect; readonly cx: number; readonly cy: number; readonly r: number };
type Growler = {
  readonly g: SideGeometry;
  readonly outerRadius: number;
  readonly floor: number;
  readonly plate: string;
};

/** A painter whose words are left out where none are wanted. */
function worded<Args>(paint: (pen: Pen, args: Args) => void): (pen: Pen, args: Args & Lettering) => void {
  return (pen, args) => lettered(args.lettering, (its) => paint(its, args))(pen);
}

/** Every still picture of the bench by name; what one is painted from is plain data. */
const PICTURES = {
  room: (pen: Pen, { layout, lettering }: Laid & Lettering) => {
    paintRoom(pen, layout);
    paintRailFittings(pen, layout);
    paintStand(pen, layout.stand, lettering);
    paintHolsters(pen, layout);
    if (layout.mode === 'narrow') paintGrommets(pen, grommets(layout));
    if (lettering) paintEndLabels(pen, layout);
  },
  veil: (pen: Pen, { layout, lettering }: Laid & Lettering) => paintVeil(pen, layout, lettering),
  matWord: (pen: Pen, { layout, inCradle }: Laid & { readonly inCradle: boolean }) =>
    paintMatWord(pen, layout, inCradle),
  hungTool: worded(
    (pen, { box, tool, tile }: { readonly box: Rect; readonly tool: HungTool; readonly tile: boolean }) =>
      paintHungTool(pen, box, tool, tile),
  ),
  endCradle: (
    pen: Pen,
    { layout, outerRadius, lettering }: Laid & Lettering & { readonly outerRadius: number },
  ) => {
    clipToEndBox(pen, layout.endBox);
    paintGrowlerEnd(pen, layout.end, outerRadius);
    if (lettering) paintJawWords(pen, layout, outerRadius);
  },
  endBlocks: (pen: Pen, { layout, lettering }: Laid & Lettering) => {
    clipToEndBox(pen, layout.endBox);
    paintBlocks(pen, layout, lettering);
  },
  endShadow: (pen: Pen, { g }: Turned) => disc(pen, 2, 4, g.core * 1.03, 'rgba(0,0,0,.35)'),
  endPart: (pen: Pen, { part, g }: Turned) => {
    paintCoreDisc(pen, part, g);
    paintCommutatorDisc(pen, part, g);
  },
  endLight: (pen: Pen, { g }: Turned) => {
    paintLight(pen, g);
    paintShaftEnd(pen, g);
  },
  endBeyondReach: (pen: Pen, { g }: Turned) => paintOutOfReach(pen, g),
  growlerBack: (pen: Pen, { g, outerRadius, floor }: Growler) =>
    paintGrowlerBack(pen, growlerStage(g, outerRadius, floor)),
  growlerFront: (pen: Pen, { g, outerRadius, floor, plate }: Growler) =>
    paintGrowlerFront(pen, growlerStage(g, outerRadius, floor), plate),
  skin: (pen: Pen, { plan }: { readonly plan: SkinPlan }) => paintSkin(pen, plan),
  shading: (pen: Pen, shading: Shading) => paintShading(pen, shading),
  coreFace: (pen: Pen, { part, radius }: Face) => paintCoreFace(pen, part, radius),
  riserFace: (pen: Pen, { part, radius }: Face) => paintRiserFace(pen, part, radius),
  barFace: (pen: Pen, { part, radius, shaft }: Face) => paintBarFace(pen, part, radius, shaft),
  leftShaft: (pen: Pen, { g, from, to }: Shaft) => paintLeftShaft(pen, g, from, to),
  rightShaft: (pen: Pen, { g, from, to }: Shaft) => paintRightShaft(pen, g, from, to),
  chalkMark: (pen: Pen, { w, h }: Sized) => paintChalk(pen, w, h),
  barNumber: (pen: Pen, { n }: { readonly n: number }) => paintNumber(pen, String(n)),
  probe: (pen: Pen, { set, build }: { readonly set: 'ammeter' | 'lamp'; readonly build: LeadBuild }) =>
    set === 'ammeter' ? paintAmmeterLead(pen, build) : paintLampLead(pen, build),
  clamp: (pen: Pen, { size }: { readonly size: number }) => paintClamp(pen, size),
  cable: (pen: Pen, { width, lamp }: { readonly width: number; readonly lamp: boolean }) =>
    paintCable(pen, 8, width, lamp),
  strip: (
    pen: Pen,
    { length, height, grip }: { readonly length: number; readonly height: number; readonly grip: number },
  ) => paintStrip(pen, length, height, grip),
  lensTool: (pen: Pen, { r }: { readonly r: number }) => paintLensTool(pen, r),
  chalk: (pen: Pen, { length }: { readonly length: number }) => paintChalkTool(pen, length),
  selectorPlate: worded((pen, { box }: { readonly box: Rect }) => paintSelectorPlate(pen, box)),
  lever: (pen: Pen, { r }: { readonly r: number }) => paintLever(pen, r),
  flags: worded((pen, { w, h, supply }: Sized & { readonly supply: Observation['supply'] }) =>
    paintFlags(pen, w, h, supply),
  ),
  rangePlate: worded(
    (pen, { w, h, range, pressed }: Sized & { readonly range: RangeA; readonly pressed: boolean }) =>
      paintRangePlate(pen, w, h, range, pressed),
  ),
  meterFace: worded(
    (pen, { w, h, range, scale }: Sized & { readonly range: RangeA; readonly scale: PrintedScale }) =>
      paintMeterFace(pen, w, h, range, scale),
  ),
  meterGlass: (pen: Pen, { w, h }: Sized) => paintMeterGlass(pen, w, h),
  lampSocket: (pen: Pen, { box, cx, cy, r, lettering }: Bulb) => paintSocket(pen, box, cx, cy, r, lettering),
  lampGlass: (pen: Pen, { cx, cy, r }: Bulb) => paintGlass(pen, cx, cy, r),
  lampHalo: (pen: Pen, { size }: { readonly size: number }) => paintHalo(pen, size),
} as const;

export type PictureName = keyof typeof PICTURES;
export type PictureArgs<N extends PictureName> = Parameters<(typeof PICTURES)[N]>[1];

function clipToEndBox(pen: Pen, b: Rect): void {
  pen.beginPath();
  pen.roundRect(b.x + 4, b.y + 4, b.w - 8, b.h - 8, 15);
  pen.clip();
}

/** Paints one picture by name. */
export function paintPicture<N extends PictureName>(pen: Pen, name: N, args: PictureArgs<N>): void {
  (PICTURES[name] as (pen: Pen, args: PictureArgs<N>) => void)(pen, args);
}
