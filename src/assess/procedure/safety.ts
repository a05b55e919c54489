import { acts, excited, lasted } from '../film.ts';
import { isLampTest, needsGrowler } from '../lampTests.ts';
import type { Worked } from '../worked.ts';
import { byRules, type Criterion, type JobCard, someOf } from './criterion.ts';

const placings = ({ film }: Worked) =>
  someOf([...acts(film, 'armature.place'), ...acts(film, 'armature.lift')].map(({ n }) => n));
const powered = ({ film }: Worked) =>
  someOf(film.stretches.filter(({ seen }) => seen.supply === 'on').map(({ since }) => since));
const lampWork = ({ readings }: Worked) =>
  someOf(readings.lamp.filter(({ selector }) => selector === 'low').map(({ entry }) => entry));
const meterWork = ({ readings }: Worked) =>
  someOf(readings.ammeter.filter(({ settled }) => settled).map(({ entry }) => entry));
const stripWork = ({ readings }: Worked) =>
  someOf(readings.strip.filter(({ selector }) => selector !== 'off').map(({ entry }) => entry));

const lampJob = ({ tests }: JobCard) => tests.some(isLampTest);
const poweredJob = ({ tests }: JobCard) => tests.some(needsGrowler);
const meterJob = ({ tests }: JobCard) => tests.includes('spaced') || tests.includes('neighbour');

const safeHands: Criterion = {
  id: 'safeHands',
  title: 'Hands and tips kept off live metal',
  applies: lampJob,
  judge: byRules(['liveTip', 'liveMetal'], {
    shownBy: lampWork,
    notShown: 'The lamp was not used on the part, so safe hands were not shown.',
    kept: 'The lamp leads were held by their handles and no hand was on the part while they were live.',
  }),
};

const probesOff: Criterion = {
  id: 'probesOff',
  title: 'Lamp probes off before turning',
  applies: ({ tests }) => tests.includes('ground'),
  judge: byRules(['turnedUnderLamp'], {
    shownBy: lampWork,
    notShown: 'The lamp was not used on the part.',
    kept: 'Both lamp probes were off the part whenever it was turned.',
  }),
};

const placedOff: Criterion = {
  id: 'placedOff',
  title: 'Off to place and to remove',
  applies: poweredJob,
  judge: byRules(['placedLive', 'liftedLive'], {
    shownBy: placings,
    notShown: 'The armature was never laid in the cradle.',
    kept: 'The bench was off whenever the armature was laid in or lifted out.',
  }),
};

const cradleFilled: Criterion = {
  id: 'cradleFilled',
  title: 'Never on with an empty cradle',
  applies: poweredJob,
  judge: byRules(['emptyCradle', 'emptyCradleTrip'], {
    shownBy: powered,
    notShown: 'The bench was never switched on.',
    kept: 'An armature lay in the cradle whenever the bench was on.',
  }),
};

const leadsRight: Criterion = {
  id: 'leadsRight',
  title: 'Right leads for the selector',
  applies: (card) => meterJob(card) || lampJob(card),
  judge: byRules(['leadsMixed'], {
    shownBy: (worked) => someOf([...meterWork(worked), ...lampWork(worked)]),
    notShown: 'No lead was used for a reading.',
    kept: 'Ammeter leads were used on HIGH and lamp leads on LOW, never one of each.',
  }),
};

const stripOnHigh: Criterion = {
  id: 'stripOnHigh',
  title: 'Strip used on HIGH',
  applies: ({ tests }) => tests.includes('strip'),
  judge: byRules(['stripOnLow'], {
    shownBy: stripWork,
    notShown: 'The strip was not used with the bench on.',
    kept: 'The strip was used on HIGH.',
  }),
};

const lampProved: Criterion = {
  id: 'lampProved',
  title: 'Lamp proved before and after',
  applies: lampJob,
  judge(worked) {
    const before = byRules(['lampNotProvedBefore'], PROVED)(worked);
    const after = byRules(['lampNotProvedAfter'], PROVED)(worked);
    const worse = before.share <= after.share ? before : after;
    const entries = someOf([...before.entries, ...after.entries]);
    return { share: (before.share + after.share) / 2, sentence: worse.sentence, entries };
  },
};
const PROVED = {
  shownBy: ({ readings }: Worked) =>
    readings.lamp.some(({ settled }) => settled) ? someOf(readings.proofs.map(({ entry }) => entry)) : [],
  notShown: 'There was no lamp test with a proof of the lamp before and after it.',
  kept: 'The lamp was seen to light with its tips together before and after the test.',
};

const notLeftOn: Criterion = {
  id: 'notLeftOn',
  title: 'Off when not in use and at the end',
  applies: poweredJob,
  judge: byRules(['leftOn', 'gaugeLive'], {
    shownBy: powered,
    notShown: 'The bench was never switched on.',
    kept: 'The bench was switched off whenever it was not in use.',
  }),
};

const keptCool: Criterion = {
  id: 'keptCool',
  title: 'Nothing overheated',
  applies: poweredJob,
  judge: byRules(['overheated'], {
    shownBy: powered,
    notShown: 'The bench was never switched on.',
    kept: 'Neither the growler nor the part was left to overheat.',
  }),
};

const needleSpared: Criterion = {
  id: 'needleSpared',
  title: 'Needle not left against its stop',
  applies: meterJob,
  /** @param longestMs  a needle may swing on to its stop; left there for longer it is being harmed */
  judge(worked, longestMs) {
    const pegged = worked.film.stretches.filter(
      (stretch) => excited(stretch.seen, 'high') && stretch.seen.needle.pegged && lasted(stretch) > longestMs,
    );
    const kept = 'The needle was never left against its upper stop.';
    if (pegged.length === 0)
      return byRules([], { shownBy: meterWork, notShown: 'The ammeter was not used.', kept })(worked);
    const entries = someOf(pegged.map(({ since }) => since));
    return {
      share: 0,
      sentence: 'The needle was left against its stop: choose a higher range first.',
      entries,
    };
  },
};

export const SAFETY: readonly Criterion[] = [
  safeHands,
  lampProved,
  placedOff,
  cradleFilled,
  leadsRight,
  stripOnHigh,
  probesOff,
  notLeftOn,
  keptCool,
  needleSpared,
];
