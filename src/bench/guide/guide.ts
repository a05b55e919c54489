import { MAT_PARTS, PREPARATIONS, type Preparation } from '../action.ts';
import { isMatTest } from '../matTests.ts';
import { ARMATURE_TESTS, type TestKind } from '../paper.ts';
import { deadLampWork } from './deadLamp.ts';
import { lampWork, provedAgain } from './lampWork.ts';
import { lookWork } from './matWork.ts';
import { gaugeWork, megohmWork, millivoltWork } from './railWork.ts';
import { calledFor, remedyWork } from './remedyWork.ts';
import { type Asked, doing, first, type GuideFacts, type GuideJob, type GuideStep } from './step.ts';

export { deadLampWork } from './deadLamp.ts';
export { handlesWork } from './handles.ts';
export { deadMeterWork, unmovedWork, zeroWork } from './meter.ts';
export { linesThatCount, type RemedyDone } from './remedies.ts';
export type { GuideFacts, GuideJob, GuideStep, Watched } from './step.ts';
export { NOTHING_WATCHED, watch } from './watch.ts';

/** Tests led from here; those of an armature on the growler have a guide of their own beside the picture. */
export type GuidedTest = Exclude<TestKind, (typeof ARMATURE_TESTS)[number]>;

export function isGuidedTest(test: TestKind): test is GuidedTest {
  return !(ARMATURE_TESTS as readonly TestKind[]).includes(test);
}

const NAMES: Readonly<Record<GuidedTest, readonly [name: string, because: string]>> = {
  fieldContinuity: ['the field frame, terminal to each brush', 'Each branch must carry current.'],
  fieldInsulation: ['the field frame, case to each brush', 'No coil may touch the case.'],
  plateInsulation: ['the insulated holders to the plate', 'They must not touch it.'],
  plateEarthed: ['the grounded brushes to the plate', 'They must be joined to it.'],
  megohm: ['the insulation tester', 'A lamp that stays dark gives no figure.'],
  millivolt: ['the millivolt drop', 'It finds what is too little for lamp, strip and ammeter.'],
  gauges: ['the gauges', 'They decide whether a remedy is worth it.'],
};

/**
 * The next step of a job on field frame, brush plate, rail tools and preparation, or null when nothing of these is
 * left to do. It goes by eyes, ears and the learner's own sheet alone.
 * @param level 1: every step with its reason; 2: only which test comes next
 */
export function nextStep(facts: GuideFacts, job: GuideJob, level: 1 | 2): GuideStep | null {
  const asked: Asked = { ...facts, job };
  return first(
    () => (level === 1 ? prepareStep(asked) : null),
    () => deadLampWork(asked),
    () => lookStep(asked, level),
    () => workStep(asked, level),
    () => cureStep(asked, level),
  );
}

/** A remedy after a finding, once every test is done; the tests it touches are then to be done again. */
function cureStep(asked: Asked, level: 1 | 2): GuideStep | null {
  if (level === 1) return remedyWork(asked);
  if (calledFor(asked) === null) return null;
  return {
    do: 'Next: what was found can be worked on here, and is tested again.',
    because: 'No part is condemned for what a brush, a saw or solder can cure.',
    act: null,
    highlight: null,
  };
}

/** The first test of the card that is not done; a used lamp is proved again before anything else is begun. */
function workStep(asked: Asked, level: 1 | 2): GuideStep | null {
  const { job } = asked;
  const next = job.tests.filter(isGuidedTest).find((test) => workOf(test, asked) !== null);
  if (next === undefined || !isMatTest(next)) {
    const owed = job.tests.some(isMatTest) ? provedAgain(asked) : null;
    if (owed !== null) return owed;
  }
  return next === undefined ? null : testStep(next, asked, job, level);
}

/** The next step of one test, or null when it is done. */
export function testStep(test: GuidedTest, facts: GuideFacts, job: GuideJob, level: 1 | 2): GuideStep | null {
  const step = workOf(test, { ...facts, job });
  if (step === null || level === 1) return step;
  const [name, because] = NAMES[test];
  return { do: `Next: ${name}.`, because, act: null, highlight: null };
}

function workOf(test: GuidedTest, asked: Asked): GuideStep | null {
  if (isMatTest(test)) return lampWork(test, asked);
  if (test === 'megohm') return megohmWork(asked);
  return test === 'millivolt' ? millivoltWork(asked) : gaugeWork(asked);
}

const PREPARE: Readonly<Record<Preparation, readonly [say: string, because: string]>> = {
  ringsOff: ['Take rings and watch off.', 'Metal on a hand finds live metal, and burns when it does.'],
  eyeProtection: ['Put on eye protection.', 'Solder and turnings fly.'],
  dryFloor: ['See that the floor is dry.', 'Wet feet are a good way to earth.'],
  secondPerson: [
    'See that a second person is about.',
    'Someone must be there to switch off and to call for help.',
  ],
  emergencyStop: ['See where the emergency stop is.', 'When it is needed nobody looks for it.'],
  protectedSupply: [
    'See that the supply comes through a residual-current device or an isolating transformer.',
    'It is the last thing between a mistake and an accident.',
  ],
  testLabel: [
    'See that the bench’s test label is in date.',
    'Somebody competent has to have looked at it lately.',
  ],
  leadsSound: ['Look over leads and handles.', 'A cracked handle lets fingers through to the metal.'],
};

/** Everything before power; once the bench has been on, the time for it is over. */
export function prepareStep({ seen }: Pick<GuideFacts, 'seen'>): GuideStep | null {
  if (seen.supply === 'on') return null;
  const item = PREPARATIONS.find((one) => !seen.prepared.includes(one));
  if (item === undefined) return null;
  const [say, because] = PREPARE[item];
  return doing({ type: 'prepare.check', item }, say, because, 'preparation');
}

function lookStep(asked: Asked, level: 1 | 2): GuideStep | null {
  const { tests, parts } = asked.job;
  if (!tests.includes('look')) return null;
  const step = first(
    ...MAT_PARTS.filter((part) => parts.includes(part)).map((part) => () => lookWork(part, asked)),
  );
  if (step === null || level === 1) return step;
  return {
    do: 'Next: look the parts over.',
    because: 'Eyes first, power afterwards.',
    act: null,
    highlight: null,
  };
}
