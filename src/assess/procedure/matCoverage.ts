import { MAT_TESTS, type MatTestKind, matPass, type Tried } from '../matPasses.ts';
import { listed } from '../words.ts';
import { atLeast, type Criterion, type Judgement, notShown, someOf } from './criterion.ts';

/** Lamp tests of field frame and brush plate: every place, in the way that hides nothing. */

interface Words {
  readonly title: string;
  /** How the test is named where nothing of it was done. */
  readonly between: string;
  /** "The lamp was put from ... to" */
  readonly from: string;
  /** Places of the test, in its own order. */
  readonly to: readonly string[];
  /** Said of places tried without what the hands have to do meanwhile. */
  readonly half: string;
}

const WORDS: Readonly<Record<MatTestKind, Words>> = {
  fieldContinuity: {
    title: 'Field continuity at both brushes, kept apart',
    between: 'from the motor terminal to a field brush, with the brushes kept apart',
    from: 'the motor terminal',
    to: ['field brush 1', 'field brush 2'],
    half: '',
  },
  fieldInsulation: {
    title: 'Field insulation at both brushes',
    between: 'from the case to a field brush',
    from: 'the case',
    to: ['field brush 1', 'field brush 2'],
    half: '',
  },
  plateInsulation: {
    title: 'Both insulated holders tested to the plate, leaned on and let be',
    between: 'from the plate to an insulated holder',
    from: 'the plate',
    to: ['insulated holder 1', 'insulated holder 2'],
    half: 'was not seen both leaned on and let be: a loose rivet makes or breaks when pressed',
  },
  plateEarthed: {
    title: 'Both grounded brushes tested to the plate, leaned on and let be',
    between: 'from the plate to a grounded brush',
    from: 'the plate',
    to: ['grounded brush 1', 'grounded brush 2'],
    half: 'was not seen both leaned on and let be: a loose rivet makes or breaks when pressed',
  },
};

function judged(kind: MatTestKind, tried: readonly Tried[]): Judgement {
  const { between, from, to, half } = WORDS[kind];
  const share = tried.reduce((sum, one) => sum + one.share, 0) / tried.length;
  if (share === 0) return notShown(`No lamp reading on LOW ${between}, held long enough to see.`);
  const named = (test: (one: Tried) => boolean) => to.filter((_, nth) => test(tried[nth]!));
  const left = named((one) => one.share === 0);
  const once = named((one) => one.share > 0 && one.share < 1);
  const entries = someOf(tried.flatMap((one) => one.entries));
  if (left.length === 0 && once.length === 0)
    return { share, sentence: `The lamp was put from ${from} to ${listed(to)}.`, entries };
  const missing = left.length > 0 ? [`the lamp was not put to ${listed(left)}`] : [];
  const unpressed = once.length > 0 ? [`${listed(once)} ${half}`] : [];
  const [first, ...rest] = [...missing, ...unpressed].join('; ');
  return { share, sentence: `${first!.toUpperCase()}${rest.join('')}.`, entries };
}

export const MAT_COVERAGE: readonly Criterion[] = (Object.keys(MAT_TESTS) as MatTestKind[]).map((kind) => ({
  id: `${kind}Pass`,
  title: WORDS[kind].title,
  applies: ({ tests }) => tests.includes(kind),
  judge: ({ readings }, least) => atLeast(least, judged(kind, matPass(readings.lamp, kind))),
}));
