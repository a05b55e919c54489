import { barPlace, type Place } from '../../bench/places.ts';
import { slotUnder } from '../passes.ts';
import type { Hands } from './hands.ts';
import { beginLamp, endLamp, holsterLeads, takeLeads, watch } from './lamp.ts';
import { type Felt, lookRemark, type Notes } from './notes.ts';

/** Looks at every riser, every bar, the core and the shaft while the part lies on the mat. */
export function lookAtArmature(hands: Hands): Notes['looks'] {
  const bars = Array.from({ length: hands.job.armature.bars }, (_, bar) => bar);
  const places: Place[] = [
    ...bars.flatMap((bar): Place[] => [`riser:${bar}`, `bar:${bar}`]),
    'core',
    'shaft',
  ];
  const looks = places.map((place) => ({
    place,
    sees: hands.do({ type: 'lens.look', place }).look?.sees ?? [],
  }));
  const found = looks.filter(({ sees }) => sees.length > 0).length;
  const remark = lookRemark(found);
  hands.do({ type: 'sheet.write', line: { test: 'look', count: null, remark } });
  return looks;
}

/** One probe on the shaft, the other on every bar within reach; then both off, turned half round, and the rest. */
export function groundTest(hands: Hands): number[] {
  const { bars } = hands.job.armature;
  const tested = new Set<number>();
  const lit: number[] = [];
  beginLamp(hands);
  while (tested.size < bars) {
    hands.do({ type: 'lead.touch', lead: 'lamp.1', place: 'shaft' });
    for (const bar of hands.barsInReach().filter((one) => !tested.has(one))) {
      hands.do({ type: 'lead.touch', lead: 'lamp.2', place: barPlace(bar) });
      if (watch(hands) !== 'dark') lit.push(bar);
      tested.add(bar);
    }
    hands.all({ type: 'lead.lift', lead: 'lamp.2' }, { type: 'lead.lift', lead: 'lamp.1' });
    if (tested.size < bars) halfTurn(hands);
  }
  endLamp(hands);
  const line = { test: 'ground', count: null, lamp: lit.length > 0 ? 'lit' : 'dark' } as const;
  hands.do({ type: 'sheet.write', line });
  return lit;
}

/** Both lamp leads back in their holsters first: no probe on the part, and a hand free to turn it. */
function halfTurn(hands: Hands): void {
  holsterLeads(hands);
  hands.do({ type: 'armature.turn', byDeg: 180 });
  takeLeads(hands);
}

/** Places along the upper arc, both sides and the top, clear of the jaws. */
const STRIP_AT_DEG = [105, 130, 180, 230, 255] as const;
const STRIP_HEIGHT_MM = 0.5;
const FEEL_MS = 150;

/** The strip at each place while the armature makes a full turn under it. */
export function stripTest(hands: Hands): Felt[] {
  hands.all({ type: 'selector.turn', to: 'high' }, { type: 'strip.take' });
  const felt = STRIP_AT_DEG.flatMap((angleDeg) => turnUnderStrip(hands, angleDeg));
  hands.all({ type: 'strip.away' }, { type: 'strip.hang' }, { type: 'selector.turn', to: 'off' });
  const pulled = felt.some(({ pull }) => pull > 0);
  hands.do({ type: 'sheet.write', line: { test: 'strip', count: null, strip: pulled ? 'pulled' : 'still' } });
  return felt;
}

function turnUnderStrip(hands: Hands, angleDeg: number): Felt[] {
  const { slots } = hands.job.armature;
  hands.do({ type: 'strip.hold', angleDeg, heightMm: STRIP_HEIGHT_MM });
  toSlotUnder(hands, angleDeg);
  return Array.from({ length: slots }, () => {
    hands.keepCool();
    const { strip, rotationDeg } = hands.wait(FEEL_MS);
    const slot = slotUnder(hands.job.armature, angleDeg, rotationDeg);
    hands.do({ type: 'armature.turn', byDeg: -360 / slots });
    return { slot, angleDeg, pull: strip.pull, buzz: strip.buzz };
  });
}

/** Brings the middle of a slot under the strip: seen by eye, since the slots are in plain view. */
function toSlotUnder(hands: Hands, angleDeg: number): void {
  const pitch = 360 / hands.job.armature.slots;
  const off = (angleDeg - hands.see().rotationDeg) % pitch;
  hands.do({ type: 'armature.turn', byDeg: off });
}
