import { barAngleDeg } from '../../src/bench/geometry.ts';
import type { LeadView, Observation } from '../../src/bench/observation.ts';
import type { LeadId, Place } from '../../src/bench/places.ts';
import { UNTOUCHED } from '../../src/bench/untouched.ts';
import type { ArmatureView, FieldFrameView, Job } from '../../src/scenario/public/job.ts';

const WAVE_23: ArmatureView = {
  typeId: 'wave23',
  name: 'four-pole starter armature',
  winding: 'wave',
  poles: 4,
  slots: 23,
  bars: 23,
  coilsPerSlot: 1,
  barZeroDeg: 0,
  outerRadius: 0.032,
  shaftRadius: 0.008,
  stackLength: 0.05,
  commutatorRadius: 0.019,
  slotMouth: 0.002,
};

const LAP_24: ArmatureView = {
  ...WAVE_23,
  typeId: 'lap24',
  name: 'two-pole dynamo armature',
  winding: 'lap',
  poles: 2,
  slots: 12,
  bars: 24,
  coilsPerSlot: 2,
  barZeroDeg: 3.75,
  outerRadius: 0.03,
  shaftRadius: 0.007,
  stackLength: 0.048,
  commutatorRadius: 0.016,
  slotMouth: 0.0026,
};

const FRAME: FieldFrameView = {
  typeId: 'frame',
  name: 'field frame, two branches of two coils',
  coils: [
    { from: 'field:terminal', to: 'joint:1' },
    { from: 'joint:1', to: 'end:1' },
    { from: 'field:terminal', to: 'joint:2' },
    { from: 'joint:2', to: 'end:2' },
  ],
  links: [],
};

/** The same frame with three series coils and a shunt coil whose earth lead is undone. */
const SHUNT_FRAME: FieldFrameView = {
  typeId: 'shunt',
  name: 'field frame, three series coils and a shunt coil',
  coils: [
    { from: 'field:terminal', to: 'joint:1' },
    { from: 'joint:1', to: 'end:1' },
    { from: 'field:terminal', to: 'end:2' },
    { from: 'field:terminal', to: 'shunt:end' },
  ],
  links: [],
};

const SERIES_FRAME: FieldFrameView = {
  typeId: 'series',
  name: 'field frame, four coils in series',
  coils: [
    { from: 'field:terminal', to: 'joint:1' },
    { from: 'joint:1', to: 'joint:2' },
    { from: 'joint:2', to: 'joint:3' },
    { from: 'joint:3', to: 'end:1' },
  ],
  links: [{ from: 'end:1', to: 'end:2' }],
};

const FRAMES: Readonly<Record<string, FieldFrameView>> = {
  branches: FRAME,
  shunt: SHUNT_FRAME,
  series: SERIES_FRAME,
};

/**
 * A job to draw.
 * @param kind   wave23 or lap24
 * @param frame  field frame by its short name; with one the brush plate comes too
 */
export function sampleJob(kind: string, frame: string | null = null): Job {
  const fieldFrame = frame === null ? null : (FRAMES[frame] ?? FRAME);
  return {
    id: 'harness',
    workshop: 'Quarry Road Training Workshop',
    card: {
      unit: 'Starter motor',
      broughtInBy: 'the yard',
      complaint: 'turns slowly',
      askedFor: 'test the armature',
    },
    mains: '230V50Hz',
    parts: ['armature'],
    armature: kind === 'lap24' ? LAP_24 : WAVE_23,
    fieldFrame,
    brushPlate: fieldFrame && { typeId: 'plate', name: 'brush plate' },
    tests: ['look', 'spaced', 'neighbour', 'ground', 'strip', 'megohm', 'millivolt', 'gauges'],
    mode: 'practice',
    minutes: null,
    limits: {
      commutatorDiameterMm: 36,
      runOutMm: 0.05,
      undercutMm: 0.5,
      brushLengthMm: 9,
      insulationMohm: 1,
    },
  };
}

const HOLSTERED: LeadView = UNTOUCHED.leads['ammeter.1'];

export function restingBench(): Observation {
  return { ...UNTOUCHED, rangeA: 30, rotationDeg: 4, mat: { fieldFrame: 'away', brushPlate: 'away' } };
}

function on(view: Partial<LeadView>): LeadView {
  return { ...HOLSTERED, at: 'hand', grip: 'handle', ...view };
}

/** A field frame in front with its brushes apart, and a set of clips on it. */
function onFrame(set: 'tester' | 'drop', one: Place, other: Place): Partial<Observation> {
  const clip = (touches: Place) => on({ at: 'clip', grip: null, touches });
  return {
    mat: { fieldFrame: 'forward', brushPlate: 'away' },
    brushesApart: true,
    leads: leads(restingBench(), { [`${set}.1`]: clip(one), [`${set}.2`]: clip(other) }),
  };
}

function leads(base: Observation, some: Partial<Record<LeadId, LeadView>>): Observation['leads'] {
  return { ...base.leads, ...some };
}

/** Named moments to look at, made by hand. */
export function samples(job: Job): Record<string, Observation> {
  const rest = restingBench();
  const placed: Observation = { ...rest, cradle: 'armature', chalkedBar: 2 };
  const high: Observation = { ...placed, selector: 'high', supply: 'on' };
  const low: Observation = { ...placed, selector: 'low', supply: 'on' };
  const bar = (deg: number) => {
    const n = job.armature.bars;
    let best = 0;
    for (let b = 0; b < n; b++) {
      const off = (x: number) => Math.abs(((barAngleDeg(job.armature, x, 4) - deg + 540) % 360) - 180);
      if (off(b) < off(best)) best = b;
    }
    return `bar:${best}` as const;
  };
  const both = leads(high, {
    'ammeter.1': on({ touches: bar(-120), stationDeg: -120 }),
    'ammeter.2': on({ touches: bar(-62), stationDeg: -62 }),
  });
  return {
    rest,
    placed,
    spaced: { ...high, leads: both, needle: { deflection: 0.62, pegged: false, atRest: true } },
    stand: {
      ...high,
      rangeA: 100,
      leads: leads(high, {
        'ammeter.1': on({ at: 'stand', grip: null, touches: bar(-120), stationDeg: -118 }),
        'ammeter.2': on({ at: 'stand', grip: null, touches: bar(-104), stationDeg: -104 }),
      }),
      needle: { deflection: 0.41, pegged: false, atRest: true },
      hands: [{ holds: 'armature' }, { holds: 'nothing' }],
    },
    pegged: { ...high, rangeA: 3, leads: both, needle: { deflection: 1.03, pegged: true, atRest: true } },
    prove: {
      ...low,
      leads: leads(low, { 'lamp.1': on({ touches: 'tip:lamp.2' }), 'lamp.2': on({ touches: null }) }),
      lamp: { glow: 8 },
    },
    ground: {
      ...low,
      leads: leads(low, {
        'lamp.1': on({ touches: 'shaft' }),
        'lamp.2': on({ touches: bar(-95), stationDeg: -95 }),
      }),
      lamp: { glow: 5 },
    },
    dull: {
      ...low,
      leads: leads(low, {
        'lamp.1': on({ touches: 'core' }),
        'lamp.2': on({ touches: bar(-130), stationDeg: -130 }),
      }),
      lamp: { glow: 1 },
    },
    strip: { ...high, strip: { at: 'core', angleDeg: 205, heightMm: 0.5, pull: 0, buzz: 0 } },
    buzz: { ...high, strip: { at: 'core', angleDeg: 225, heightMm: 0.5, pull: 3, buzz: 6 } },
    snapped: { ...high, strip: { at: 'core', angleDeg: 150, heightMm: 0.5, pull: 4, buzz: 3 } },
    riser: { ...placed, look: { place: 'riser:17', sees: ['solderThrown'] } },
    bridge: { ...placed, look: { place: 'bar:17', sees: ['metalAcrossMica', 'burntBarEdge'] } },
    charred: { ...placed, look: { place: 'riser:16', sees: ['charredInsulation'] } },
    diameter: { ...rest, chalkedBar: 2, gauge: { gauge: 'diameter', brush: null, mm: 37.6 } },
    runOut: { ...rest, gauge: { gauge: 'runOut', brush: null, mm: 0.14 } },
    undercut: { ...rest, gauge: { gauge: 'undercut', brush: null, mm: 0.65 } },
    brush: {
      ...rest,
      mat: { fieldFrame: 'forward', brushPlate: 'away' },
      gauge: { gauge: 'brushLength', brush: 1, mm: 8.5 },
    },
    frame: { ...placed, mat: { fieldFrame: 'forward', brushPlate: 'away' } },
    frameTest: {
      ...low,
      mat: { fieldFrame: 'forward', brushPlate: 'away' },
      brushesApart: true,
      leads: leads(low, {
        'lamp.1': on({ touches: 'field:terminal' }),
        'lamp.2': on({ touches: 'field:brush2' }),
      }),
      lamp: { glow: 8 },
    },
    insulation: {
      ...rest,
      ...onFrame('tester', 'field:case', 'field:brush1'),
      tester: { ...rest.tester, at: 'rail', pressed: true, megohms: 12.4, charged: true, discharged: false },
    },
    drop: {
      ...rest,
      ...onFrame('drop', 'field:terminal', 'field:brush2'),
      drop: { at: 'rail', feed: ['field:terminal', 'field:brush2'], feedA: 5, millivolts: 8.2, over: false },
    },
    plate: {
      ...low,
      mat: { fieldFrame: 'away', brushPlate: 'forward' },
      leads: leads(low, {
        'lamp.1': on({ touches: 'plate:metal' }),
        'lamp.2': on({ touches: 'plate:insulated1', leaning: true }),
      }),
      lamp: { glow: 3 },
    },
    coil: {
      ...placed,
      mat: { fieldFrame: 'forward', brushPlate: 'away' },
      look: { place: 'field:brush2', sees: ['charredFieldCoil'] },
    },
    cutOut: { ...rest, selector: 'high', supply: 'cutOut', growlerHeat: 'tooHotToTouch' },
    smoking: { ...high, partHeat: 'smoking', growlerHeat: 'hot' },
    stopped: { ...low, supply: 'isolated', stopped: { sentence: 'A hand was on live metal.' } },
  };
}
