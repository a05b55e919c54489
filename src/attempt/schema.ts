import * as z from 'zod/mini';
import {
  type Action,
  BENCH_CARES,
  BRUSHES,
  GAUGES,
  MAT_PARTS,
  PART_KINDS,
  PREPARATIONS,
  RANGES_A,
} from '../bench/action.ts';
import { CONDITIONS, DISPOSITIONS, type SheetLine, TEST_KINDS, type Verdict } from '../bench/paper.ts';
import { ALL_LEADS, FIELD_PLACES, PLATE_PLACES, type Place, type PlatePlace } from '../bench/places.ts';
import { TEST_VOLTS } from '../engine/instruments/insulationTester.ts';
import { REMEDIES } from '../engine/parts/remedies.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Entry } from './entry.ts';

/**
 * What an attempt file looks like, field by field, but for the scenario inside it, which is read as any scenario is.
 * What one entry says of another (times, numbers) is checked in parse.ts.
 */
const text = (most: number) => z.string().check(z.maxLength(most));
const number = (least: number, most: number) => z.number().check(z.minimum(least), z.maximum(most));
const whole = (least: number, most: number) => z.int().check(z.minimum(least), z.maximum(most));
/** Simulated time, ms: a week is more than any attempt. */
const time = number(0, 7 * 24 * 3_600_000);

const PLACE =
  /^(?:(?:bar|riser):(?:0|[1-9]\d{0,2})|shaft|core|tip:(?:ammeter|lamp|tester|drop)\.[12]|field:(?:terminal|brush[12]|case)|plate:(?:metal|(?:insulated|earthed)[12])|handle:(?:ammeter|lamp)\.[12]|lampBulb)$/;
const place = z.custom<Place>(
  (value) => typeof value === 'string' && PLACE.test(value),
  'a place on the bench, such as "bar:4", "riser:4", "shaft", "core" or "tip:lamp.1"',
);
const lead = z.enum(ALL_LEADS);
const selector = z.enum(['off', 'low', 'high']);
const range = z.literal(RANGES_A);
const part = z.enum(PART_KINDS);
const matPart = z.enum(MAT_PARTS);
const brush = z.literal(BRUSHES);
const testVolt = z.literal(TEST_VOLTS);
const mode = z.enum(['guided', 'practice', 'assessed']);

const line = z.strictObject({
  test: z.enum(TEST_KINDS),
  part: z.exactOptional(part),
  count: z.nullable(whole(0, 999)),
  at: z.exactOptional(z.enum([...FIELD_PLACES, ...PLATE_PLACES])),
  readingA: z.exactOptional(z.number()),
  rangeA: z.exactOptional(range),
  lamp: z.exactOptional(z.enum(['lit', 'dim', 'dark'])),
  strip: z.exactOptional(z.enum(['still', 'pulled', 'buzzing'])),
  megohms: z.exactOptional(z.union([z.number(), z.literal('over')])),
  testVolt: z.exactOptional(testVolt),
  millivolts: z.exactOptional(z.number()),
  millimetres: z.exactOptional(z.number()),
  gauge: z.exactOptional(z.enum(GAUGES)),
  brush: z.exactOptional(brush),
  remark: z.exactOptional(text(4000)),
});

const HOLDERS = PLATE_PLACES.filter(
  (place): place is Exclude<PlatePlace, 'plate:metal'> => place !== 'plate:metal',
);
const foundPlace = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('bar'), count: whole(0, 999) }),
  z.strictObject({ kind: z.literal('pair'), count: whole(0, 999) }),
  z.strictObject({ kind: z.literal('branch'), brush: z.literal([1, 2]) }),
  z.strictObject({ kind: z.literal('holder'), holder: z.enum(HOLDERS) }),
  z.strictObject({ kind: z.literal('somewhere') }),
]);
const verdict = z.strictObject({
  part,
  findings: z
    .array(z.strictObject({ condition: z.enum(CONDITIONS), place: foundPlace }))
    .check(z.maxLength(20)),
  disposition: z.enum(DISPOSITIONS),
  sure: number(0, 1),
  because: text(8000),
});

const act = <T extends Action['type']>(type: T) => z.literal(type);
const action = z.discriminatedUnion('type', [
  z.strictObject({ type: act('selector.turn'), to: selector }),
  z.strictObject({ type: act('range.turn'), to: range }),
  z.strictObject({ type: act('armature.place') }),
  z.strictObject({ type: act('armature.lift') }),
  z.strictObject({ type: act('armature.hold') }),
  z.strictObject({ type: act('armature.release') }),
  z.strictObject({ type: act('armature.turn'), byDeg: number(-36_000, 36_000) }),
  z.strictObject({ type: act('lead.take'), lead, grip: z.enum(['handle', 'tip']) }),
  z.strictObject({ type: act('lead.touch'), lead, place }),
  z.strictObject({ type: act('lead.lift'), lead }),
  z.strictObject({ type: act('lead.clamp'), lead }),
  z.strictObject({ type: act('lead.holster'), lead }),
  z.strictObject({ type: act('strip.take') }),
  z.strictObject({ type: act('strip.hold'), angleDeg: z.number(), heightMm: z.number() }),
  z.strictObject({ type: act('strip.away') }),
  z.strictObject({ type: act('strip.hang') }),
  z.strictObject({ type: act('lead.lean'), lead, on: z.boolean() }),
  z.strictObject({ type: act('part.takeUp'), part: matPart }),
  z.strictObject({ type: act('part.putBack'), part: matPart }),
  z.strictObject({ type: act('brushes.part') }),
  z.strictObject({ type: act('brushes.join') }),
  z.strictObject({ type: act('gauge.read'), gauge: z.enum(GAUGES), brush: z.exactOptional(brush) }),
  z.strictObject({
    type: act('remedy.do'),
    remedy: z.enum(REMEDIES),
    bar: z.exactOptional(whole(0, 999)),
  }),
  z.strictObject({ type: act('bench.setRight'), what: z.enum(BENCH_CARES) }),
  z.strictObject({ type: act('tester.volts'), to: testVolt }),
  z.strictObject({ type: act('tester.press'), on: z.boolean() }),
  z.strictObject({ type: act('tester.discharge') }),
  z.strictObject({ type: act('drop.feed'), at: z.nullable(z.tuple([place, place])) }),
  z.strictObject({ type: act('prepare.check'), item: z.enum(PREPARATIONS) }),
  z.strictObject({ type: act('lens.look'), place }),
  z.strictObject({ type: act('chalk.mark'), bar: whole(0, 999) }),
  z.strictObject({ type: act('sheet.write'), line }),
  z.strictObject({ type: act('verdict.write'), verdict }),
  z.strictObject({ type: act('job.handIn') }),
]);

const touch = z.strictObject({
  currentA: number(0, 10),
  effect: z.enum(['notFelt', 'felt', 'cannotLetGo', 'mayKill']),
});
const breaches = z.array(
  z.strictObject({
    interlock: text(60),
    sentence: text(1000),
    critical: z.boolean(),
    touch: z.exactOptional(touch),
  }),
);
const outcome = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('done'), breaches }),
  z.strictObject({ kind: z.literal('refused'), sentence: text(1000), breaches }),
]);
const happening = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('lamp.proved') }),
  z.strictObject({ type: z.literal('bench.idle') }),
  z.strictObject({ type: z.literal('bench.overheated'), what: z.enum(['growler', 'part']) }),
  z.strictObject({ type: z.literal('bench.tripped') }),
  z.strictObject({ type: z.literal('bench.cooled') }),
]);
const happened = z.strictObject({ atMs: time, what: happening, breaches });

const before = z.strictObject({
  supply: z.enum(['off', 'on', 'cutOut', 'isolated']),
  needle: z.strictObject({ deflection: number(0, 2), pegged: z.boolean(), atRest: z.boolean() }),
  lamp: z.strictObject({ glow: whole(0, 8) }),
  pull: whole(0, 4),
  buzz: whole(0, 8),
  hum: z.strictObject({ level: whole(0, 20), pitchHz: number(0, 1000), harshness: whole(0, 10) }),
  growlerHeat: z.enum(['cool', 'warm', 'hot', 'tooHotToTouch']),
  rotationDeg: number(0, 360),
  tester: z.exactOptional(z.strictObject({ megohms: number(0, 1000), over: z.boolean() })),
  drop: z.exactOptional(
    z.strictObject({ feedA: number(0, 100), millivolts: z.nullable(number(0, 1000)), over: z.boolean() }),
  ),
  gaugeMm: z.exactOptional(number(0, 1000)),
});

const entry = z.strictObject({
  n: whole(0, 1_000_000),
  atMs: time,
  action,
  outcome,
  before,
  since: z.exactOptional(z.array(happened)),
});

export const attemptSchema = z.strictObject({
  format: z.literal(ATTEMPT_FORMAT),
  version: z.literal(ATTEMPT_VERSION),
  points: z.exactOptional(z.literal('whole')),
  id: text(100).check(z.minLength(1)),
  mode,
  learner: text(200),
  startedAt: z
    .string()
    .check(
      z.regex(
        /^\d{4}-\d\d-\d\dT[\d:.]+(?:Z|[+-]\d\d:\d\d)$/,
        'a date and time such as "2031-05-06T08:30:00Z"',
      ),
    ),
  scenario: z.unknown(),
  entries: z.array(entry),
  endMs: time,
});

/** The compiler holds schema and type together. */
type Fits<Read, Promised> = [Read] extends [Promised] ? true : never;
export const SCHEMAS_FIT: readonly [
  Fits<z.infer<typeof action>, Action>,
  Fits<Action['type'], z.infer<typeof action>['type']>,
  Fits<z.infer<typeof entry>, Entry>,
  Fits<z.infer<typeof line>, SheetLine>,
  Fits<z.infer<typeof verdict>, Verdict>,
] = [true, true, true, true, true];
