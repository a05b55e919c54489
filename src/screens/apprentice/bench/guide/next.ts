import {
  deadLampWork,
  deadMeterWork,
  prepareStep as guidedPreparation,
  nextStep as guidedStep,
  handlesWork,
  zeroWork,
} from '../../../../bench/guide/guide.ts';
import type { TestKind } from '../../../../bench/paper.ts';
import { ammeterStep, holsterAmmeter } from './ammeter.ts';
import { coolStep } from './cool.ts';
import { holsterLamp, lampStep } from './lamp.ts';
import { placeStep, prepareStep } from './prepare.ts';
import { asStep, doing, type Situation, type Step } from './step.ts';
import { hangStrip, stripStep } from './strip.ts';
import { verdictStep } from './verdict.ts';

/** The next step of a job for someone who does it for the first time. Tests come in the order of the card. */
export function nextStep(at: Situation): Step {
  return (
    beforePower(at) ??
    coolStep(at) ??
    troubleStep(at) ??
    prepareStep(at) ??
    testStep(at) ??
    clearStep(at) ??
    verdictStep(at)
  );
}

type BenchTest = 'spaced' | 'neighbour' | 'strip' | 'ground';

const WORK: Readonly<Record<BenchTest, (at: Situation) => Step | null>> = {
  spaced: (at) => ammeterStep('spaced', at),
  neighbour: (at) => ammeterStep('neighbour', at),
  strip: stripStep,
  ground: groundStep,
};

/** The lamp's own leads first, as long as there is anything left to do with them. */
function groundStep(at: Situation): Step | null {
  const step = lampStep(at);
  return step && (asStep(handlesWork({ seen: at.seen, watched: at.known.watched })) ?? step);
}

/** What must be out of the hands before a test begins. */
const AWAY: Readonly<Record<BenchTest, readonly ((at: Situation) => Step | null)[]>> = {
  spaced: [hangStrip, holsterLamp],
  neighbour: [hangStrip, holsterLamp],
  strip: [holsterAmmeter, holsterLamp],
  ground: [holsterAmmeter, hangStrip],
};

function isBenchTest(test: TestKind): test is BenchTest {
  return test in WORK;
}

function testStep(at: Situation): Step | null {
  for (const test of at.job.tests) {
    const step = isBenchTest(test) ? WORK[test](at) : null;
    if (step && isBenchTest(test)) return first([...AWAY[test], placeStep], at) ?? step;
  }
  const other = otherStep(at);
  return other && (hangStrip(at) ?? other);
}

/** Field frame, brush plate and the tools of the rail: the bench's own guide leads through those. */
function otherStep({ seen, lines, remedies, job, known }: Situation): Step | null {
  return asStep(guidedStep({ seen, lines, remedies, watched: known.watched }, job, 1));
}

/** The bench itself is at fault. */
function troubleStep(at: Situation): Step | null {
  const asked = { seen: at.seen, watched: at.known.watched };
  const metered = METERED.some((test) => at.job.tests.includes(test) && WORK[test](at) !== null);
  return asStep(deadLampWork(asked) ?? (metered ? (zeroWork(asked) ?? deadMeterWork(asked)) : null));
}
const METERED = ['spaced', 'neighbour'] as const;

function beforePower({ seen }: Situation): Step | null {
  return asStep(guidedPreparation({ seen }));
}

function clearStep(at: Situation): Step | null {
  const away = first([holsterAmmeter, hangStrip, holsterLamp], at);
  if (away) return away;
  if (at.seen.selector === 'off') return null;
  return doing(
    { type: 'selector.turn', to: 'off' },
    'Turn the selector to OFF.',
    'The bench is off whenever it is not in use.',
  );
}

function first(steps: readonly ((at: Situation) => Step | null)[], at: Situation): Step | null {
  for (const step of steps) {
    const found = step(at);
    if (found) return found;
  }
  return null;
}
