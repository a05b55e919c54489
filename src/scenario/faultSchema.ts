import * as z from 'zod/mini';
import { PANEL_LEADS } from '../bench/places.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import type { BrushPlateFault } from '../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../engine/parts/fieldFrame.ts';
import type { Wear } from '../engine/parts/wear.ts';
import type { BenchFault } from './hidden/benchFault.ts';

/** Index of a bar or coil; whether the part has it is checked against its design. */
const index = z.int().check(z.minimum(0), z.maximum(999));
/** Resistance of a joint, bridge or leak, ohm: below a microohm nothing differs, above 1 Gohm nothing is joined. */
const ohm = z.number().check(z.minimum(1e-6), z.maximum(1e9));
const share = z.number().check(z.minimum(0), z.maximum(1));
const breakdownV = z.nullable(z.number().check(z.gt(0), z.maximum(10_000)));

const armatureFault = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('openCoil'), coil: index }),
  z.strictObject({
    kind: z.literal('riserJoint'),
    bar: index,
    form: z.enum(['bar', 'oneEnd', 'bothEnds']),
    ohm: z.union([ohm, z.literal('open')]),
  }),
  z.strictObject({ kind: z.literal('bridgedBars'), bar: index, ohm, by: z.enum(['copper', 'carbon']) }),
  z.strictObject({
    kind: z.literal('turnShort'),
    coil: index,
    turns: z.int().check(z.minimum(1), z.maximum(999)),
    ohm,
  }),
  z.strictObject({ kind: z.literal('coilShort'), topCoil: index, bottomCoil: index, ohm }),
  z.strictObject({ kind: z.literal('groundedBar'), bar: index, ohm }),
  z.strictObject({ kind: z.literal('groundedCoil'), coil: index, fraction: share, ohm }),
  z.strictObject({ kind: z.literal('reversedCoil'), coil: index }),
  z.strictObject({ kind: z.literal('weakInsulation'), ohm, breakdownV }),
  z.strictObject({ kind: z.literal('dirtyCommutator') }),
]);

const fieldFault = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('openCoil'), coil: index }),
  z.strictObject({
    kind: z.literal('brushJoint'),
    brush: z.literal([1, 2]),
    ohm: z.union([ohm, z.literal('open')]),
  }),
  z.strictObject({ kind: z.literal('groundedCoil'), coil: index, fraction: share, ohm }),
  z.strictObject({ kind: z.literal('weakInsulation'), coil: index, ohm, breakdownV }),
  z.strictObject({ kind: z.literal('shortedTurns'), coil: index, share, ohm }),
]);

const insulatedHolder = z.enum(['plate:insulated1', 'plate:insulated2']);
const holder = z.enum(['plate:insulated1', 'plate:insulated2', 'plate:earthed1', 'plate:earthed2']);
const plateFault = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('dirt'), holder: insulatedHolder, ohm }),
  z.strictObject({ kind: z.literal('looseRivet'), holder, makes: z.enum(['pressed', 'released']), ohm }),
  z.strictObject({ kind: z.literal('insulatorDown'), holder: insulatedHolder, ohm, breakdownV }),
  z.strictObject({ kind: z.literal('brokenPigtail'), holder }),
]);

const lead = z.enum(PANEL_LEADS);
const benchFault = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('blownLamp') }),
  z.strictObject({ kind: z.literal('brokenLead'), lead }),
  z.strictObject({ kind: z.literal('crackedHandle'), lead }),
  z.strictObject({
    kind: z.literal('ammeterZero'),
    offset: z.number().check(z.minimum(-0.2), z.maximum(0.2)),
  }),
]);

/** A length that can be gauged, mm. */
const mm = (most: number) => z.number().check(z.minimum(0), z.maximum(most));
export const wearSchema = z.strictObject({
  commutatorDiameterMm: z.exactOptional(mm(200)),
  runOutMm: z.exactOptional(mm(5)),
  undercutMm: z.exactOptional(mm(5)),
  brushLengthsMm: z.exactOptional(z.tuple([mm(60), mm(60), mm(60), mm(60)])),
});

const atMostEight = z.maxLength(8);
export const armatureFaults = z.strictObject({ faults: z.array(armatureFault).check(atMostEight) });
export const fieldFaults = z.strictObject({ faults: z.array(fieldFault).check(atMostEight) });
export const plateFaults = z.strictObject({ faults: z.array(plateFault).check(atMostEight) });
export const benchFaults = z.strictObject({ faults: z.array(benchFault).check(atMostEight) });

/** The compiler holds schema and type together: what the schema lets through must be what the type promises. */
type Fits<Read, Promised> = [Read] extends [Promised] ? true : never;
export const FAULT_SCHEMAS_FIT: readonly [
  Fits<z.infer<typeof armatureFault>, ArmatureFault>,
  Fits<ArmatureFault, z.infer<typeof armatureFault>>,
  Fits<z.infer<typeof fieldFault>, FieldFrameFault>,
  Fits<FieldFrameFault, z.infer<typeof fieldFault>>,
  Fits<z.infer<typeof plateFault>, BrushPlateFault>,
  Fits<BrushPlateFault, z.infer<typeof plateFault>>,
  Fits<z.infer<typeof benchFault>, BenchFault>,
  Fits<BenchFault, z.infer<typeof benchFault>>,
  Fits<z.infer<typeof wearSchema>, Partial<Wear>>,
] = [true, true, true, true, true, true, true, true, true];
