import lap24 from '../../../scenarios/parts/lap-24.json' with { type: 'json' };
import lap28 from '../../../scenarios/parts/lap-28.json' with { type: 'json' };
import wave23 from '../../../scenarios/parts/wave-23.json' with { type: 'json' };
import { createArmatureSolver, emptyCradle } from '../../../src/engine/armatureBench.ts';
import { MAINS } from '../../../src/engine/drive.ts';
import { scaleFraction } from '../../../src/engine/instruments/ammeter.ts';
import { armatureResistance } from '../../../src/engine/instruments/armatureDc.ts';
import { displayedOhm } from '../../../src/engine/instruments/insulationTester.ts';
import { AMBIENT_K, benchLamp, steadyFilament, stepFilament } from '../../../src/engine/instruments/lamp.ts';
import { neighbourDrops } from '../../../src/engine/instruments/millivoltDrop.ts';
import { needleAt } from '../../../src/engine/instruments/needle.ts';
import { amplitude, STRIP } from '../../../src/engine/instruments/stripMotion.ts';
import { COLD_WINDING, stepCoil, stepWinding } from '../../../src/engine/instruments/thermal.ts';
import { touchCurrent } from '../../../src/engine/instruments/touch.ts';
import { seeded } from '../../../src/engine/math/random.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';

/** One figure of the engine by name. */
export type Figures = Readonly<Record<string, number>>;

const PARTS = [wave23, lap28, lap24] as ArmatureDesign[];
const FAULTS: Readonly<Record<string, readonly ArmatureFault[]>> = {
  sound: [],
  open: [{ kind: 'openCoil', coil: 5 }],
  bridge: [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }],
  several: [
    { kind: 'riserJoint', bar: 3, form: 'bar', ohm: 0.02 },
    { kind: 'groundedCoil', coil: 9, fraction: 0.5, ohm: 0.05 },
    { kind: 'groundedBar', bar: 14, ohm: 0.02 },
  ],
};

/** The same figures wherever the engine runs: currents, pulls, heat, light and needles of all armatures. */
export function engineFigures(): Figures {
  return { ...circuits(), ...instruments() };
}

function circuits(): Record<string, number> {
  const all: Record<string, number> = {};
  for (const a of PARTS) {
    const solver = createArmatureSolver(a);
    for (const [name, faults] of Object.entries(FAULTS)) {
      const drive = {
        mains: MAINS['230V50Hz'],
        excitation: 'high',
        windingC: 30,
        rotationRad: 1.234,
      } as const;
      const meter = { barA: 5, barB: 6, loopOhm: 0.0081 };
      const p = solver.solve(faults, { ...drive, meter });
      const put = (what: string, value: number) => {
        all[`${a.id} ${name} ${what}`] = value;
      };
      put('growler', p.growlerA);
      put('flux', p.fluxWb);
      put('meter', p.meterA);
      put('spaced', p.reading(0, 6, 0.008));
      put('volts', p.openVolt(2, 9));
      put('pull', p.strip(97, 0.0006).meanN);
      put('shake', p.strip(170, 0.0004).alternatingN);
      put(
        'loss',
        p.coilLossW().reduce((sum, w) => sum + w, 0),
      );
      put('resistance', armatureResistance(a, faults, 4, 'core')!);
      put('drop', neighbourDrops(a, faults)[5]!);
    }
  }
  return all;
}

function instruments(): Record<string, number> {
  const lamp = benchLamp(230);
  const circuit = { volt: 230, path: { re: 900, im: -200 } };
  const random = seeded('engine figures');
  const loss = (windingC: number) => emptyCradle(MAINS['120V60Hz'], 'low', windingC).growlerW;
  return {
    filament: steadyFilament(lamp, circuit),
    'filament on the way': stepFilament(lamp, AMBIENT_K, circuit, 7),
    needle: needleAt({ fromDeflection: 0.1, fromRate: 0, target: 1.4 }, 310).deflection,
    scale: scaleFraction(7.3, 15),
    winding: stepWinding(COLD_WINDING, loss, 900).windingC,
    coil: stepCoil(3, 12, 0.02, 400),
    tester: displayedOhm({ ohm: 3e6, farad: 5e-9 }, 250, 900),
    strip: amplitude(STRIP, 0.3, 100),
    touch: touchCurrent({ lamp, volt: 230, hz: 50, reference: 'earthed', way: 'toEarth' }).currentA,
    random: Array.from({ length: 100 }, random).at(-1)!,
  };
}

/** What a page that loads this offers the test. */
export type FiguresInPage = typeof engineFigures;
Object.assign(globalThis, { figuresInPage: engineFigures });
