import * as z from 'zod/mini';
import { PART_KINDS } from '../bench/action.ts';
import { CLUES } from '../bench/observation.ts';
import { TEST_KINDS } from '../bench/paper.ts';
import { MAINS, type MainsId } from '../engine/drive.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { armatureFaults, benchFaults, fieldFaults, plateFaults, wearSchema } from './faultSchema.ts';
import { rubricSchema } from './rubricSchema.ts';
import { type LensPlace, SCENARIO_FORMAT, SCENARIO_VERSION, type Scenario } from './scenario.ts';

/**
 * What a scenario file and a part file look like, field by field. What one field says of another (a bar that does
 * not exist, two faults at one place) is checked afterwards, in parse.ts and contradictions.ts.
 */
const words = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const LENS_PLACE =
  /^(?:(?:bar|riser):(?:0|[1-9]\d{0,2})|shaft|core|field:(?:terminal|brush[12]|case)|plate:(?:metal|(?:insulated|earthed)[12])|handle:(?:ammeter|lamp)\.[12]|lampBulb)$/;
const lensPlace = z.custom<LensPlace>(
  (value) => typeof value === 'string' && LENS_PLACE.test(value),
  'a place the lens can be put on, such as "riser:4", "bar:4", "shaft", "core", "field:brush1" or "plate:metal"',
);

/** A limit on the card, mm or megohms. */
const limit = z.exactOptional(z.number().check(z.minimum(0), z.maximum(1000)));
const limits = z.strictObject({
  commutatorDiameterMm: limit,
  runOutMm: limit,
  undercutMm: limit,
  brushLengthMm: limit,
  insulationMohm: limit,
});

const publicHalf = z.strictObject({
  id: z
    .string()
    .check(
      z.regex(/^[a-z0-9](?:[a-z0-9-]{0,38}[a-z0-9])?$/, 'an id of 1 to 40 small letters, digits and hyphens'),
    ),
  workshop: words(80),
  card: z.strictObject({
    unit: words(80),
    broughtInBy: words(160),
    complaint: words(1200),
    askedFor: words(600),
  }),
  mains: z.enum(Object.keys(MAINS) as MainsId[]),
  parts: z.array(z.enum(PART_KINDS)).check(z.minLength(1), z.maxLength(PART_KINDS.length)),
  armature: words(40),
  fieldFrame: z.exactOptional(words(40)),
  brushPlate: z.exactOptional(words(40)),
  tests: z.array(z.enum(TEST_KINDS)).check(z.minLength(1), z.maxLength(TEST_KINDS.length)),
  mode: z.enum(['guided', 'practice', 'assessed']),
  minutes: z.nullable(z.number().check(z.minimum(1), z.maximum(600))),
  limits: z.exactOptional(limits),
  rubric: z.exactOptional(rubricSchema),
});

const hiddenHalf = z.strictObject({
  armature: armatureFaults,
  fieldFrame: z.exactOptional(fieldFaults),
  brushPlate: z.exactOptional(plateFaults),
  bench: z.exactOptional(benchFaults),
  wear: z.exactOptional(wearSchema),
  startRotationDeg: z.number().check(z.minimum(0), z.lt(360)),
  seed: z.int().check(z.minimum(0), z.maximum(0xffffffff)),
  supplyReference: z.enum(['floating', 'earthed']),
  falseLeads: z.exactOptional(
    z.array(z.strictObject({ place: lensPlace, clue: z.enum(CLUES) })).check(z.maxLength(20)),
  ),
});

export const scenarioSchema = z.strictObject({
  format: z.literal(SCENARIO_FORMAT),
  version: z.literal(SCENARIO_VERSION),
  public: publicHalf,
  hidden: hiddenHalf,
});

/** A length on a part, m: nothing on this bench is longer than half a metre. */
const length = z.number().check(z.gt(0), z.maximum(0.5));
const count = (most: number) => z.int().check(z.minimum(1), z.maximum(most));

export const partSchema = z.strictObject({
  id: words(40),
  name: words(80),
  winding: z.enum(['lap', 'wave']),
  poles: z.int().check(z.minimum(2), z.maximum(12), z.multipleOf(2, 'an even number of poles')),
  slots: z.int().check(z.minimum(4), z.maximum(120)),
  coilsPerSlot: count(6),
  bars: z.int().check(z.minimum(4), z.maximum(240)),
  turns: count(200),
  commutatorPitch: z.int().check(z.minimum(-240), z.maximum(240)),
  spanSlots: count(120),
  equalised: z.boolean(),
  dummyPlace: z.optional(z.int().check(z.minimum(0), z.maximum(719))),
  outerRadius: length,
  shaftRadius: length,
  stackLength: length,
  jawGap: length,
  slotMouth: length,
  lipHeight: length,
  wedgeHeight: z.number().check(z.minimum(0), z.maximum(0.5)),
  slotWidth: length,
  layerHeight: length,
  relativePermeability: z.number().check(z.minimum(1), z.maximum(1e6)),
  conductorArea: z.number().check(z.gt(0), z.maximum(1e-3)),
  commutatorRadius: length,
});

/** The compiler holds schema and type together: what the schema lets through must be what the type promises. */
type Fits<Read, Promised> = [Read] extends [Promised] ? true : never;
export const SCHEMAS_FIT: readonly [
  Fits<z.infer<typeof scenarioSchema>, Scenario>,
  Fits<z.infer<typeof partSchema>, ArmatureDesign>,
  Fits<ArmatureDesign, z.infer<typeof partSchema>>,
] = [true, true, true];
