import { describe, expect, it } from 'vitest';
import { matStory } from '../../../src/assess/evidence/story/mat.ts';
import type { EvidenceStory } from '../../../src/assess/evidence/story/shape.ts';
import { evidenceStories } from '../../../src/assess/evidence/story/stories.ts';
import { filmOf } from '../../../src/assess/film.ts';
import type { BrushPlateFault } from '../../../src/engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../../src/engine/parts/fieldFrame.ts';
import {
  movedWords,
  nextWords,
  readingWords,
} from '../../../src/screens/apprentice/debrief/evidence/evidenceWords.ts';
import type { JobOptions } from '../../support/benchDriver.ts';
import { attemptOf, library } from '../attempts.ts';
import { branch, finding, holder, PartsWorker } from '../partsWork.ts';

const film = (me: PartsWorker) => filmOf(attemptOf(me.session, me.scenario, me.atMs + 500), library);
const calling = { part: 'fieldFrame', bars: 23, chalkedBar: null, vocabulary: 'american' } as const;

const FRAME: JobOptions = {
  parts: ['fieldFrame'],
  tests: ['fieldContinuity', 'fieldInsulation'],
  fieldFaults: [{ kind: 'openCoil', coil: 3 }],
};
const frame = (options: Partial<JobOptions> = {}) => new PartsWorker({ ...FRAME, ...options }).prepares();
const frameStory = (me: PartsWorker) => matStory(film(me), 'fieldFrame');

const rivet: BrushPlateFault = {
  kind: 'looseRivet',
  holder: 'plate:insulated1',
  makes: 'pressed',
  ohm: 0.3,
};
const PLATE: JobOptions = {
  parts: ['brushPlate'],
  tests: ['plateInsulation', 'plateEarthed'],
  plateFaults: [rivet],
};
const plate = (options: Partial<JobOptions> = {}) => new PartsWorker({ ...PLATE, ...options }).prepares();
const plateStory = (me: PartsWorker) => matStory(film(me), 'brushPlate');

/** Every story: chances with every reading, none above one, and what is ruled out was there before. */
function soundly({ kinds, steps, openBefore }: EvidenceStory) {
  for (const { chances } of kinds) {
    expect(chances).toHaveLength(steps.length + 1);
    expect(Math.min(...chances)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...chances)).toBeLessThanOrEqual(1);
  }
  let open = openBefore;
  for (const step of steps) {
    expect(step.open).toBeGreaterThanOrEqual(open - step.ruledOut.length);
    for (const { from, to } of step.ruledOut) expect(to).toBeLessThan(from);
    open = step.open;
  }
}

describe('the story of a field frame', () => {
  it('shrinks, reading by reading, to the open branch, which coil and joint share', () => {
    const story = frameStory(
      frame()
        .worksFrame()
        .decides('fieldFrame', [finding('openCoil', branch(2))], 'winder'),
    );
    soundly(story);
    expect(story.kinds[0]).toMatchObject({ what: 'openCoil', alike: ['brokenJoint'], places: [2, 1] });
    expect(story.judged).toMatchObject({ judgement: 'proven', missed: 0 });
    expect(story.judged!.findings[0]).toMatchObject({
      claim: { condition: 'openCoil', mark: { kind: 'branch', brushes: [2] } },
      right: true,
    });
    expect(story.next).toBeNull();
    expect(story.differing).toEqual([]);
  });

  it('says of each reading what it was and what it ruled out', () => {
    const { steps } = frameStory(frame().worksFrame());
    expect(steps.map((step) => readingWords(step, calling))).toEqual([
      'Lamp, motor terminal and field brush 1: lit',
      'Lamp, motor terminal and field brush 2: dark',
      'Lamp, case and field brush 1: dark',
      'Lamp, case and field brush 2: dark',
    ]);
    expect(movedWords(steps[0]!.ruledOut, calling)).toBe(
      'open coil or broken joint in the branch to field brush 1',
    );
    expect(movedWords(steps[1]!.ruledOut, calling)).toBe('nothing these tests can show');
  });

  it('sends on to the test that was left out, and to the drops where nothing else can tell', () => {
    const half = frameStory(
      frame({ fieldFaults: [] }).getsLampReady('fieldFrame').testsContinuity().putsLampAway(),
    );
    expect(nextWords(half.next!, calling)).toMatch(
      /^Put the lamp from the case to field brush [12], brushes apart/,
    );
    const short: FieldFrameFault = { kind: 'shortedTurns', coil: 3, share: 0.4, ohm: 2e-5 };
    const rails = frameStory(
      frame({
        fieldFaults: [short],
        tests: ['fieldContinuity', 'fieldInsulation', 'millivolt'],
      }).worksFrame(),
    );
    expect(nextWords(rails.next!, calling)).toMatch(
      /^Feed the branch from the motor terminal to field brush [12]/,
    );
  });

  it('takes account of the lens in the order of the work', () => {
    const { steps } = frameStory(
      frame({ tests: ['look', ...FRAME.tests!] })
        .looksOver(false)
        .worksFrame(),
    );
    expect(steps.map(({ reading }) => reading.kind)).toEqual([
      ...Array(4).fill('look'),
      ...Array(4).fill('lamp'),
    ]);
    expect(readingWords(steps[0]!, calling)).toMatch(/^Lens, (motor terminal|case|field brush \d): /);
  });

  it('marks the sheet line that says something else than the lamp did', () => {
    const me = frame({ mode: 'assessed' }).getsLampReady('fieldFrame').testsContinuity();
    me.writes({ test: 'fieldContinuity', at: 'field:brush1', lamp: 'dark' }).putsLampAway();
    const wrong = me.session.log.findLast(({ action }) => action.type === 'sheet.write')!;
    expect(frameStory(me).differing).toEqual([wrong.n]);
  });
});

describe('the story of a brush plate', () => {
  it('sends on to the holder that was not leaned on', () => {
    const light = plate().getsLampReady('brushPlate').testsInsulatedHolders(false).testsEarthedBrushes(false);
    const { next } = plateStory(light.putsLampAway());
    expect(nextWords(next!, calling)).toMatch(/holder [12], and lean on it, proved before and after$/);
  });

  it('ends at the holder with the loose rivet', () => {
    const said = finding('looseRivet', holder('plate:insulated1'));
    const story = plateStory(plate().worksPlate().decides('brushPlate', [said], 'cleanAndRetest'));
    soundly(story);
    expect(story.judged!.judgement).toBe('proven');
    expect(story.kinds[0]).toMatchObject({ what: 'looseRivet', places: [4, 1] });
    const raised = story.steps.filter((step) =>
      step.raised.some(({ possibility }) => possibility.what === 'looseRivet'),
    );
    expect(raised.map((step) => readingWords(step, calling))).toEqual([
      'Lamp, bare plate and insulated holder 1, leaned on: lit',
      'Lamp, bare plate and insulated holder 1: dark',
    ]);
    expect(movedWords(raised[1]!.raised, calling)).toBe('loose rivet at insulated holder 1');
    expect(movedWords(raised[1]!.ruledOut, calling)).toContain('grounded at insulated holder 1');
  });

  it('is told of the part as it came, and leaves out what was read after a remedy', () => {
    const me = plate().worksPlate();
    const before = plateStory(me).steps.length;
    me.liftsArmature().does({ type: 'remedy.do', remedy: 'tightenRivets' }).worksPlate();
    expect(me.refused).toEqual([]);
    const after = plateStory(me);
    expect(after.endedByRemedy).toBe(true);
    expect(after.steps).toHaveLength(before);
  });

  it('stands beside those of the other parts of the job, in their order', () => {
    const both = new PartsWorker({
      parts: ['fieldFrame', 'brushPlate'],
      tests: [...FRAME.tests!, ...PLATE.tests!],
    });
    expect(evidenceStories(film(both.prepares())).map(({ part }) => part)).toEqual([
      'fieldFrame',
      'brushPlate',
    ]);
  });
});
