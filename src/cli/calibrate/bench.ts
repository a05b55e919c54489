import { SEEN_AS } from '../../assess/evidence/insulation.ts';
import { READING_NOISE } from '../../assess/evidence/noise.ts';
import {
  type LampReading,
  type LampShows,
  type LookReading,
  lampShows,
  type MeterReading,
  type StripReading,
} from '../../assess/evidence/reading.ts';
import { PULLS, STRIP_SLIP } from '../../assess/evidence/strip.ts';
import { RANGES_A, type RangeA } from '../../bench/action.ts';
import { barOf, type Place } from '../../bench/places.ts';
import type { ArmatureSolver } from '../../engine/armatureBench.ts';
import { type Drive, MAINS, type Mains, type MainsId, type OperatingPoint } from '../../engine/drive.ts';
import {
  type Ammeter,
  contactOhm,
  loopOhm,
  makeAmmeter,
  scaleCurrent,
  scaleFraction,
  targetDeflection,
} from '../../engine/instruments/ammeter.ts';
import { benchLamp, glow, steadyFilament } from '../../engine/instruments/lamp.ts';
import { DEFLECTION_STEP, UPPER_STOP } from '../../engine/instruments/needle.ts';
import { feel } from '../../engine/instruments/stripMotion.ts';
import { COPPER_DENSITY, COPPER_HEAT, ROOM_C } from '../../engine/instruments/thermal.ts';
import { seeded } from '../../engine/math/random.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { coilCopperVolume } from '../../engine/parts/winding.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { ScenarioHidden } from '../../scenario/scenario.ts';
import type { Draw, DrawnPart } from './part.ts';
import type { World } from './worlds.ts';

/** No probe makes a better contact than this, ohm. */
const LEAST_CONTACT_OHM = 0.05e-3;
/** How long a contact is held before the needle is read, s. */
const HELD_S = { least: 2, most: 8 } as const;
/** Temperatures a growler winding has in use, degrees C. */
const WINDING_C = { least: 25, most: 65 } as const;

/** The bench with a drawn part in the cradle: instruments answer from the engine, with every error they have. */
export class TrialBench {
  readonly design: ArmatureDesign;
  readonly mains: Mains;
  private readonly part: DrawnPart;
  private readonly solver: ArmatureSolver;
  private readonly ammeter: Ammeter;
  private readonly draw: Draw;
  private readonly world: World;
  private readonly hidden: ScenarioHidden;
  private readonly windingC: number;
  private readonly coilJPerK: number;
  private entry = 0;

  constructor(part: DrawnPart, mains: MainsId, seed: string, world: World) {
    this.part = part;
    this.design = part.design;
    this.mains = MAINS[mains];
    this.world = world;
    this.draw = seeded(`trial ${seed}`);
    this.coilJPerK = COPPER_HEAT * COPPER_DENSITY * coilCopperVolume(part.design);
    this.windingC = WINDING_C.least + (WINDING_C.most - WINDING_C.least) * this.draw();
    this.ammeter = makeAmmeter(seeded(`ammeter ${seed}`));
    this.solver = world.solver(part.design);
    this.hidden = {
      armature: { faults: part.faults },
      startRotationDeg: 0,
      seed: Math.floor(this.draw() * 2 ** 31),
      supplyReference: 'floating',
    };
  }

  /**
   * Reads on the lowest range that holds the reading, the coils warmed by the time it takes.
   * @param written by an eye on the sheet, else the needle itself
   */
  meter(bars: readonly [number, number], rotationDeg: number, written: boolean): MeterReading {
    const amps = this.amperes(bars, rotationDeg);
    const rangeA = RANGES_A.find((full) => amps < 0.92 * full) ?? RANGES_A[RANGES_A.length - 1]!;
    const target = targetDeflection(amps, rangeA, this.ammeter);
    const pegged = target >= UPPER_STOP;
    const shown = Math.round(Math.min(target, UPPER_STOP) / DEFLECTION_STEP) * DEFLECTION_STEP;
    const from = written ? ('sheet' as const) : ('instrument' as const);
    const laid = { bars, rotationDeg, excitation: 'high' as const };
    const reading = { kind: 'meter', entry: this.entry++, ...laid, rangeA, from } as const;
    if (this.draw() < READING_NOISE[from].slip)
      return { ...reading, deflection: UPPER_STOP * this.draw(), pegged: false };
    return { ...reading, deflection: written ? this.write(shown, rangeA) : shown, pegged };
  }

  private amperes(bars: readonly [number, number], rotationDeg: number): number {
    const loop = loopOhm(this.contact(), this.contact());
    if (this.world.meter) return this.world.meter(this.part, rotationDeg, bars, loop);
    const tap = { barA: bars[0], barB: bars[1], loopOhm: loop };
    const drive = { ...this.drive(rotationDeg, 'high'), meter: tap };
    const seconds = HELD_S.least + (HELD_S.most - HELD_S.least) * this.draw();
    const coilC = this.point(drive)
      .coilLossW()
      .map((watts) => ROOM_C + Math.min(60, (watts * seconds) / this.coilJPerK));
    return this.point({ ...drive, coilC }).meterA;
  }

  strip(angleDeg: number, rotationDeg: number): StripReading {
    const held = { angleDeg, heightMm: 0.5, rotationDeg, excitation: 'high' as const };
    const force = this.point(this.drive(rotationDeg, 'high')).strip(angleDeg, 0.0005);
    const felt = feel(force, 0.0005, this.mains.hz).pull;
    const pull = this.draw() < STRIP_SLIP ? Math.floor(PULLS * this.draw()) : felt;
    return { kind: 'strip', entry: this.entry++, ...held, pull, from: 'instrument' };
  }

  /** A lamp between two proofs. */
  lamp(places: readonly [Place, Place]): LampReading {
    const metal = (place: Place) => barOf(place) ?? ('core' as const);
    const peakV = Math.SQRT2 * this.mains.volt;
    const path = this.solver.path(this.part.faults, metal(places[0]), metal(places[1]), this.mains.hz, peakV);
    const lamp = benchLamp(this.mains.volt);
    const shown = lampShows(glow(steadyFilament(lamp, { volt: this.mains.volt, path })));
    const shows = this.mistake(shown);
    return { kind: 'lamp', entry: this.entry++, places, shows, from: 'instrument' };
  }

  /** What an eye makes of a lamp. */
  private mistake(shown: LampShows): LampShows {
    const draw = this.draw();
    const { dark, dim } = SEEN_AS[shown];
    if (draw < dark) return 'dark';
    return draw < dark + dim ? 'dim' : 'lit';
  }

  look(place: Place): LookReading {
    const sees = cluesAt(this.hidden, this.design, place);
    return { kind: 'look', entry: this.entry++, place, sees };
  }

  /** An eye reads to a hundredth of the scale either way and writes three figures. */
  private write(shown: number, rangeA: RangeA): number {
    const seen = Math.max(0, shown + 0.01 * (2 * this.draw() - 1));
    return scaleFraction(Number(scaleCurrent(seen, rangeA).toPrecision(3)), rangeA);
  }

  private contact(): number {
    const drawn = contactOhm(this.draw, this.part.dirty);
    const middle = this.part.dirty ? 1.75e-3 : 0.3e-3;
    return Math.max(LEAST_CONTACT_OHM, middle + (drawn - middle) * this.world.scatter);
  }

  private drive(rotationDeg: number, excitation: 'high' | 'low'): Drive {
    const rotationRad = (rotationDeg * Math.PI) / 180;
    return {
      mains: this.mains,
      excitation,
      rotationRad,
      windingC: this.windingC,
      meter: null,
    };
  }

  private point(drive: Drive): OperatingPoint {
    return this.solver.solve(this.part.faults, drive);
  }
}
