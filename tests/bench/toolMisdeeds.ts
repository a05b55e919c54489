import type { InterlockCode } from '../../src/bench/interlocks.ts';
import type { BenchDriver, JobOptions } from '../support/benchDriver.ts';

/** How a rule of remedies, gauges or rail tools gets broken: everything before is good work, the last act is not. */
interface Misdeed {
  readonly code: InterlockCode;
  readonly what: string;
  readonly job?: JobOptions;
  upTo(me: BenchDriver): unknown;
  misdeed(me: BenchDriver): unknown;
}

const TOOLS: JobOptions = { parts: ['armature', 'fieldFrame'], tests: ['look', 'megohm', 'millivolt'] };
const LAMP_FIRST: JobOptions = { tests: ['look', 'ground', 'megohm'] };
const PLATE: JobOptions = { parts: ['armature', 'brushPlate'] };

const onMat = (me: BenchDriver) => me.clipsOn('tester', 'shaft', 'bar:0');
const inCradle = (me: BenchDriver) =>
  me.placesArmature().clipsOn('tester', 'shaft', `bar:${me.barNear(-90)}`);

export const TOOL_MISDEEDS: readonly Misdeed[] = [
  {
    code: 'remedyLive',
    what: 'cleaning a brush plate with the bench on',
    job: PLATE,
    upTo: (me) => me.placesArmature().takesUp('brushPlate').switches('high'),
    misdeed: (me) => me.cures('cleanPlateInsulation'),
  },
  {
    code: 'remedyLive',
    what: 'skimming an armature in a live cradle',
    upTo: (me) => me.placesArmature().switches('high'),
    misdeed: (me) => me.cures('skimAndPolish'),
  },
  {
    code: 'remedyInCradle',
    what: 'soldering in the cradle',
    upTo: (me) => me.placesArmature(),
    misdeed: (me) => me.cures('resolderRiser', 3),
  },
  {
    code: 'setRightLive',
    what: 'changing the bulb with the bench on',
    upTo: (me) => me.placesArmature().switches('low'),
    misdeed: (me) => me.setsRight('lamp'),
  },
  {
    code: 'gaugeLive',
    what: 'measuring a brush with the bench on',
    job: { parts: ['armature', 'fieldFrame'] },
    upTo: (me) => me.placesArmature().takesUp('fieldFrame').switches('high'),
    misdeed: (me) => me.gauges('brushLength', 1),
  },
  {
    code: 'crackedHandle',
    what: 'holding a live lamp lead with a cracked handle',
    job: { benchFaults: [{ kind: 'crackedHandle', lead: 'lamp.1' }] },
    upTo: (me) => me.placesArmature().switches('low'),
    misdeed: (me) => me.takes('lamp.1'),
  },
  {
    code: 'testerLive',
    what: 'pressing the tester with the growler on',
    job: TOOLS,
    upTo: (me) =>
      me
        .placesArmature()
        .takesUp('fieldFrame')
        .clipsOn('tester', 'field:case', 'field:brush1')
        .switches('high'),
    misdeed: (me) => me.presses(true),
  },
  {
    code: 'testerInCradle',
    what: 'testing an armature that lies in the cradle',
    job: TOOLS,
    upTo: inCradle,
    misdeed: (me) => me.presses(true),
  },
  {
    code: 'testerNotAlone',
    what: 'testing with the feed still on the part',
    job: TOOLS,
    upTo: (me) => onMat(me.feeds('bar:2', 'bar:8')),
    misdeed: (me) => me.presses(true),
  },
  {
    code: 'testerBeforeLamp',
    what: 'testing a part that has not been under the lamp',
    job: LAMP_FIRST,
    upTo: onMat,
    misdeed: (me) => me.presses(true),
  },
  {
    code: 'testerHand',
    what: 'taking a clip by its jaws with the button down',
    job: TOOLS,
    upTo: (me) => onMat(me).presses(true),
    misdeed: (me) => me.takes('tester.1', 'tip'),
  },
  {
    code: 'testerHand',
    what: 'reaching for the field frame under the tester',
    job: TOOLS,
    upTo: (me) => me.takesUp('fieldFrame').clipsOn('tester', 'field:case', 'field:brush1').presses(true),
    misdeed: (me) => me.partsBrushes(),
  },
  {
    code: 'notDischarged',
    what: 'laying a charged armature back in the cradle',
    job: TOOLS,
    upTo: (me) => {
      onMat(me).testsInsulation();
      me.hangsUpBoth('tester');
    },
    misdeed: (me) => me.placesArmature(),
  },
  {
    code: 'notDischarged',
    what: 'putting another lead on a charged part',
    job: TOOLS,
    upTo: (me) => {
      onMat(me).testsInsulation();
      me.takes('drop.1');
    },
    misdeed: (me) => me.touches('drop.1', 'bar:4'),
  },
  {
    code: 'dropLive',
    what: 'clamping the feed on with the growler on',
    job: TOOLS,
    upTo: (me) => me.placesArmature().takesUp('fieldFrame').switches('high'),
    misdeed: (me) => me.feeds('field:terminal', 'field:brush1'),
  },
  {
    code: 'dropInCradle',
    what: 'feeding an armature in the cradle',
    job: TOOLS,
    upTo: (me) => me.placesArmature(),
    misdeed: (me) => me.feeds(`bar:${me.barNear(-90)}`, `bar:${me.barNear(-120)}`),
  },
];
