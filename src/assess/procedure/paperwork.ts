import type { PartKind } from '../../bench/action.ts';
import { STRIP_ARC_DEG } from '../../bench/geometry.ts';
import type { TestKind } from '../../bench/paper.ts';
import { testsOf } from '../done.ts';
import { acts } from '../film.ts';
import { listed, PART_WORDS, TEST_WORDS } from '../words.ts';
import type { Worked, WrittenLine } from '../worked.ts';
import { type Criterion, notShown, someOf } from './criterion.ts';

interface Owed {
  readonly part: PartKind;
  readonly test: TestKind;
  /** The last verdict on the part. */
  readonly before: number;
}

const isWritten = (sheet: readonly WrittenLine[], { part, test, before }: Owed) =>
  sheet.some(({ line, entry, part: about }) => entry < before && line.test === test && about === part);

/** Lines owed before each verdict: every test of the part. */
function owedLines({ parts, tests, verdicts }: Worked): Owed[] {
  return parts.flatMap((part) => {
    const before = verdicts.get(part)?.entry ?? -1;
    return testsOf(part, tests).map((test) => ({ part, test, before }));
  });
}

const recorded: Criterion = {
  id: 'recordedFirst',
  title: 'Recorded before the verdict',
  judge(worked) {
    const { sheet, verdicts, parts } = worked;
    if (verdicts.size === 0) return notShown('No verdict was written.');
    const owed = owedLines(worked);
    const missing = owed.filter((line) => !isWritten(sheet, line));
    const written = [...verdicts.values()].map(({ entry }) => entry);
    const last = Math.max(...written);
    const lines = sheet.filter(({ entry }) => entry < last).map(({ entry }) => entry);
    const named = ({ part, test }: Owed) =>
      parts.length > 1 ? `${TEST_WORDS[test]} of ${PART_WORDS[part]}` : TEST_WORDS[test];
    const sentence =
      missing.length === 0
        ? 'Every test was on the sheet before the verdict was written.'
        : `The verdict was written without ${listed(missing.map(named))} on the sheet.`;
    return { share: 1 - missing.length / owed.length, sentence, entries: someOf([...lines, ...written]) };
  },
};

const chalked: Criterion = {
  id: 'chalkedFirst',
  title: 'A bar chalked to count from',
  applies: ({ parts }) => parts.includes('armature'),
  judge({ film, sheet }) {
    const chalk = acts(film, 'chalk.mark')[0];
    if (chalk === undefined)
      return notShown('No bar was chalked: counts on the sheet have nothing to start from.');
    const early = sheet.find(({ line, entry }) => line.count !== null && entry < chalk.n);
    if (early === undefined)
      return { share: 1, sentence: 'A bar was chalked before anything was counted.', entries: [chalk.n] };
    const sentence = 'Bars were counted on the sheet before one of them was chalked.';
    return { share: 0, sentence, entries: [early.entry, chalk.n] };
  },
};

const notedPull = ({ line }: WrittenLine) => line.strip === 'pulled' || line.strip === 'buzzing';

/** Whether, up to an entry, the strip was felt to pull anywhere clear of the jaws. */
function pulledClear({ readings }: Worked, before: number): boolean {
  return readings.strip.some(
    ({ entry, angleDeg, pull, buzz }) =>
      entry < before &&
      (pull > 0 || buzz > 0) &&
      angleDeg >= STRIP_ARC_DEG.clearFrom &&
      angleDeg <= STRIP_ARC_DEG.clearTo,
  );
}

const stripClear: Criterion = {
  id: 'stripClear',
  title: 'A pull next to a jaw not taken for a short',
  applies: ({ tests }) => tests.includes('strip'),
  judge(worked) {
    const used = worked.readings.strip.filter((reading) => reading.excited);
    if (used.length === 0) return notShown('The strip was not used on HIGH.');
    const false_ = worked.sheet.filter((line) => notedPull(line) && !pulledClear(worked, line.entry));
    if (false_.length === 0) {
      const entries = someOf(used.map(({ entry }) => entry));
      return { share: 1, sentence: 'No pull next to a jaw was written down as a finding.', entries };
    }
    const sentence =
      'A pull was written down that was not felt clear of the jaws, where every armature pulls.';
    return { share: 0, sentence, entries: someOf(false_.map(({ entry }) => entry)) };
  },
};

export const PAPERWORK: readonly Criterion[] = [chalked, recorded, stripClear];
