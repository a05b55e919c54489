import { describe, expect, it } from 'vitest';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { newInductances, segmentInductances } from '../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../src/engine/circuit/topology.ts';
import { BENCH_GROWLER, endLeakageHenry, LINEAR_GROWLER, sharedDepth } from '../../src/engine/growler.ts';
import { slotPotentials, type ToothNetwork, toothNetwork } from '../../src/engine/magnetics/toothNetwork.ts';
import { factorCholesky, solveCholesky } from '../../src/engine/math/cholesky.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { stripFlux, stripForce } from '../../src/engine/strip.ts';
import { lookAtStrip, newStripLinks, STRIP, type StripLinks } from '../../src/engine/stripLinks.ts';
import { referenceData } from '../reference/data.ts';
import { drive, LAP_24, LAP_28, WAVE_23 } from './support/parts.ts';

/** Strip in plane finite elements (fem-strip.json): pull per ampere squared and flux per ampere, per metre. */
interface StripCase {
  readonly armature: string;
  readonly blade_beta_deg: number;
  readonly slot_offset_pitches: number;
  readonly coil_side_under_blade: 'plus' | 'minus';
  readonly gap_mm: number;
  readonly Fcc: number;
  readonly flux_c: number;
}
const { cases } = referenceData<{ cases: readonly StripCase[] }>('fem-strip.json');
const label = (c: StripCase) =>
  `${c.armature} ${c.coil_side_under_blade}, ${c.blade_beta_deg} degrees, ${c.slot_offset_pitches} pitch aside, ${c.gap_mm} mm`;
const SMALL = 1e-3;

/** One ampere in the coil with a side under the strip, too little to saturate it. */
function heldOver(one: StripCase) {
  const a = one.armature.startsWith('A') ? WAVE_23 : LAP_24;
  const pitch = (2 * Math.PI) / a.slots;
  const under = one.coil_side_under_blade === 'plus' ? 0 : a.spanSlots;
  const rotation = (one.blade_beta_deg * Math.PI) / 180 + (one.slot_offset_pitches - under) * pitch;
  const { tips } = slotPotentials(a, BENCH_GROWLER, rotation);
  const w = a.slots + 1;
  const re = Float64Array.from(
    { length: a.slots + 2 },
    (_, t) => SMALL * (tips[t * w + 1]! - tips[t * w + 1 + a.spanSlots]!),
  );
  const u = { re, im: new Float64Array(re.length) };
  const links = newStripLinks(a.slots);
  lookAtStrip(a, BENCH_GROWLER, rotation, one.blade_beta_deg, one.gap_mm / 1000, links);
  const force = stripForce(a, BENCH_GROWLER, SMALL ** -2, u, rotation, one.blade_beta_deg, one.gap_mm / 1000);
  return { pull: force.meanN, flux: stripFlux(links, u) / 2 / SMALL };
}

describe('strip against finite elements', () => {
  const clear = cases.filter((c) => c.blade_beta_deg >= 90);
  const near = clear.filter((c) => c.slot_offset_pitches <= 0.25);

  it.each(near.map((c) => [label(c), c] as const))('pull within 5 %%: %s', (_label, one) => {
    expect(Math.abs(heldOver(one).pull / one.Fcc - 1)).toBeLessThan(0.05);
  });

  it('half a pitch aside within 5 % of the pull over the slot', () => {
    for (const one of clear.filter((c) => c.slot_offset_pitches === 0.5)) {
      const over = clear.find(
        (c) => c.armature === one.armature && c.blade_beta_deg === 120 && c.slot_offset_pitches === 0,
      )!;
      expect(Math.abs(heldOver(one).pull - one.Fcc) / over.Fcc).toBeLessThan(0.05);
    }
  });

  it.each(near.map((c) => [label(c), c] as const))('flux it carries within 8 %%: %s', (_label, one) => {
    const most = one.slot_offset_pitches === 0 ? 0.08 : 0.16;
    expect(Math.abs(heldOver(one).flux / Math.abs(one.flux_c) - 1)).toBeLessThan(most);
  });
});

/** Slot potential matrix of a core with the strip's permeances put into the network itself. */
function withStrip(a: ArmatureDesign, rotation: number, links: StripLinks): Float64Array {
  const net = toothNetwork(a, LINEAR_GROWLER, rotation);
  const s = a.slots;
  const n = 2 * s + 2;
  const node = (place: number) => (place < s ? place : s + place);
  const all = Array.from({ length: links.count }, (_, k) => k);
  const sum = all.reduce((x, k) => x + links.p[k]!, 0);
  for (const i of all) {
    net.nodes[node(links.places[i]!) * n + node(links.places[i]!)]! += links.p[i]!;
    for (const j of all)
      net.nodes[node(links.places[i]!) * n + node(links.places[j]!)]! -= (links.p[i]! * links.p[j]!) / sum;
  }
  factorCholesky(net.nodes, n);
  return fluxesBySource(net, n);
}

/** M column by column: growler, then a current in each slot returning evenly through all. */
function fluxesBySource({ slots: s, nodes, tooth, core }: ToothNetwork, n: number): Float64Array {
  const w = s + 1;
  const m = new Float64Array(w * w);
  for (let c = 0; c < w; c++) {
    const force = Array.from(
      { length: s },
      (_, t) => (c > 0 && c - 1 <= t ? 1 : 0) - (c > 0 ? (t + 1) / s : 0),
    );
    const u = new Float64Array(n);
    u[2 * s] = c === 0 ? -core : 0;
    u[2 * s + 1] = c === 0 ? core : 0;
    force.forEach((f, t) => {
      u[t] = -tooth * f;
      u[s + t] = tooth * f;
    });
    solveCholesky(nodes, n, u, 1);
    m[c] = core * (u[2 * s]! - u[2 * s + 1]! + (c === 0 ? 1 : 0));
    const inward = force.map((f, t) => tooth * (u[t]! - u[s + t]! + f));
    const potential = Array.from({ length: s }, (_, t) => inward.slice(t).reduce((x, y) => x + y, 0));
    const mean = potential.reduce((x, y) => x + y, 0) / s;
    potential.forEach((v, t) => {
      m[(1 + t) * w + c] = v - mean;
    });
  }
  m[0]! += 4e-7 * Math.PI * BENCH_GROWLER.windingLeakage;
  return m;
}

/** Largest loop current of a faulted winding, 230 V HIGH, for a slot potential matrix. */
function loopCurrent(a: ArmatureDesign, faults: readonly ArmatureFault[], m: Float64Array): number {
  const topology = windingTopology(a, faults);
  const circuit = new LoopCircuit({
    nodes: topology.nodes,
    branches: topology.segments,
    inductive: topology.windingSegments,
  });
  const depth = sharedDepth(LINEAR_GROWLER, a.stackLength);
  const l = newInductances(topology.windingSegments);
  segmentInductances(a, depth, topology, m, 0, l);
  const s = circuit.solve(l, 100 * Math.PI, depth * m[0]! + endLeakageHenry(LINEAR_GROWLER));
  const { turns, ohm20 } = LINEAR_GROWLER.windings['230V50Hz'].high;
  const ampereTurns = (230 * turns) / Math.hypot(ohm20 + turns ** 2 * s.ownRe, turns ** 2 * s.ownIm);
  const loops = Array.from(s.yRe, (re, k) => Math.hypot(re, s.yIm[k]!));
  return ampereTurns * Math.max(...loops);
}

describe('a strip over a shorted slot', () => {
  const bridge: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }];

  // Ours: the same reluctance network with the strip as one more node of it, solved whole. No independent witness.
  it.each([WAVE_23, LAP_28, LAP_24].map((a) => [a.id, a] as const))(
    'pulls as a strip does that is part of the network, %s',
    (_id, a) => {
      const angleDeg = a.poles === 4 ? 110 : 180;
      const pitch = (2 * Math.PI) / a.slots;
      const links = newStripLinks(a.slots);
      let compared = 0;
      for (let k = 0; k < a.slots; k++) {
        const rotationRad = (angleDeg * Math.PI) / 180 - k * pitch;
        const point = createArmatureSolver(a, LINEAR_GROWLER).solve(bridge, drive({ rotationRad }));
        const { meanN } = point.strip(angleDeg, 5e-4);
        if (meanN < 0.3) continue;
        lookAtStrip(a, LINEAR_GROWLER, rotationRad, angleDeg, 5e-4, links);
        const alone = loopCurrent(a, bridge, slotPotentials(a, LINEAR_GROWLER, rotationRad).m);
        const tesla = saturatedTesla(a, rotationRad, links, alone);
        for (let i = 0; i < links.count; i++) links.p[i]! /= Math.sqrt(1 + (tesla / STRIP.saturationT) ** 2);
        const loaded = loopCurrent(a, bridge, withStrip(a, rotationRad, links));
        const unloaded = pullAt(a, rotationRad, angleDeg, alone);
        expect(loaded / alone).toBeLessThan(1);
        expect(Math.abs(meanN / pullAt(a, rotationRad, angleDeg, loaded) - 1), `slot ${k}`).toBeLessThan(
          0.04,
        );
        expect(meanN).toBeLessThan(unloaded);
        compared++;
      }
      expect(compared).toBeGreaterThan(0);
    },
  );

  /** Pull with a current in the two slots of the bridged coil nearest the strip, nothing else. */
  function pullAt(a: ArmatureDesign, rotation: number, angleDeg: number, amps: number): number {
    const u = potentialsOf(a, rotation, amps);
    return stripForce(
      a,
      LINEAR_GROWLER,
      sharedDepth(LINEAR_GROWLER, a.stackLength),
      u,
      rotation,
      angleDeg,
      5e-4,
    ).meanN;
  }

  function saturatedTesla(a: ArmatureDesign, rotation: number, links: StripLinks, amps: number): number {
    return (Math.SQRT2 * stripFlux(links, potentialsOf(a, rotation, amps))) / 2 / STRIP.thickness;
  }

  /** Teeth driven by the coils a bridge closes; the growler's own field is next to nothing up there. */
  function potentialsOf(a: ArmatureDesign, rotation: number, amps: number) {
    const { tips } = slotPotentials(a, LINEAR_GROWLER, rotation);
    const w = a.slots + 1;
    const source = slotTurns(a);
    const re = Float64Array.from({ length: a.slots + 2 }, (_, t) =>
      source.reduce((x, turns, slot) => x + amps * turns * tips[t * w + 1 + slot]!, 0),
    );
    return { re, im: new Float64Array(re.length) };
  }

  /** Turns in every slot of the loop through the bridge. */
  function slotTurns(a: ArmatureDesign): number[] {
    const topology = windingTopology(a, bridge);
    const circuit = new LoopCircuit({
      nodes: topology.nodes,
      branches: topology.segments,
      inductive: topology.windingSegments,
    });
    const fed = new Float64Array(topology.nodes);
    const short = Array.from(circuit.forest.cotree).indexOf(topology.windingSegments);
    const loop = new Float64Array(circuit.loops);
    loop[short] = 1;
    const currents = circuit.branchCurrents(loop, fed);
    const turns = new Array<number>(a.slots).fill(0);
    topology.segments.slice(0, topology.windingSegments).forEach((s, k) => {
      turns[s.topSlot]! += s.top * currents[k]!;
      turns[s.bottomSlot]! += s.bottom * currents[k]!;
    });
    return turns;
  }
});
