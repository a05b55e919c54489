import { BUILT_IN_RUBRIC, HOUSE_SEQUENCE, type Rubric, type RubricRow, THRESHOLDS } from './public/rubric.ts';
import type { Issue } from './scenario.ts';
import { nameValue } from './sentences.ts';

const KNOWN: readonly string[] = [
  ...BUILT_IN_RUBRIC.criteria.map(({ criterion }) => criterion),
  HOUSE_SEQUENCE,
];

/** What is wrong with a rubric that its fields, one by one, cannot show. Paths begin with the one handed in. */
export function checkRubric(rubric: Rubric, path: string): Issue[] {
  return [
    ...rubric.criteria.flatMap((row, nth) => checkRow(rubric, row, nth, `${path}.criteria[${nth}]`)),
    ...checkWorth(rubric, `${path}.criteria`),
    ...checkSequence(rubric, path),
  ];
}

/**
 * Points that are not whole, which a new job's rubric must not have, since people sign for them; one that was kept before
 * is still read, and marked in whole points all the same.
 */
export function brokenPoints({ criteria, sure }: Rubric, path: string): Issue[] {
  const points = [
    ...criteria.map(({ weight }, nth) => ({ at: `${path}.criteria[${nth}].weight`, weight })),
    ...(sure === null ? [] : [{ at: `${path}.sure.weight`, weight: sure.weight }]),
  ];
  return points
    .filter(({ weight }) => !Number.isInteger(weight))
    .map(({ at, weight }) => ({ path: at, sentence: `Expected whole points, but ${weight} came.` }));
}

function checkRow({ criteria }: Rubric, row: RubricRow, nth: number, path: string): Issue[] {
  const named = nameValue(row.criterion);
  if (!KNOWN.includes(row.criterion)) {
    const sentence = `Expected a known criterion (${KNOWN.join(', ')}), but ${named} came.`;
    return [{ path: `${path}.criterion`, sentence }];
  }
  if (criteria.findIndex(({ criterion }) => criterion === row.criterion) !== nth)
    return [
      { path: `${path}.criterion`, sentence: `Expected each criterion once, but ${named} came again.` },
    ];
  return checkThreshold(row, `${path}.threshold`);
}

function checkThreshold({ criterion, threshold }: RubricRow, path: string): Issue[] {
  if (threshold === undefined) return [];
  const range = THRESHOLDS[criterion];
  if (range === undefined)
    return [
      { path, sentence: `Expected this left out, since "${criterion}" has none, but ${threshold} came.` },
    ];
  if (threshold >= range.least && threshold <= range.most) return [];
  const sentence = `Expected ${range.least} to ${range.most} ${range.unit}, but ${threshold} came.`;
  return [{ path, sentence }];
}

function checkWorth({ criteria }: Rubric, path: string): Issue[] {
  if (criteria.some(({ weight }) => weight > 0)) return [];
  return [{ path, sentence: 'Expected at least one criterion worth more than 0 points, but none came.' }];
}

function checkSequence({ criteria, houseSequence }: Rubric, path: string): Issue[] {
  const marked = criteria.some(({ criterion }) => criterion === HOUSE_SEQUENCE);
  if (houseSequence === undefined)
    return marked
      ? [
          {
            path: `${path}.houseSequence`,
            sentence: `Expected the order of the tests, since "${HOUSE_SEQUENCE}" is marked, but nothing came.`,
          },
        ]
      : [];
  const twice = houseSequence.flatMap((test, nth) =>
    houseSequence.indexOf(test) === nth
      ? []
      : [
          {
            path: `${path}.houseSequence[${nth}]`,
            sentence: `Expected each test once, but ${nameValue(test)} came again.`,
          },
        ],
  );
  if (marked) return twice;
  const sentence = `Expected a criterion "${HOUSE_SEQUENCE}" to mark it by, but none came.`;
  return [...twice, { path: `${path}.houseSequence`, sentence }];
}
