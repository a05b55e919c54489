import { capital } from '../../bench/capital.ts';

/** What a place in a file is called by people. Its exact path stands beside it for whoever looks into the file. */

type Name = readonly [RegExp, (nth: string) => string];

const counted = (word: string) => (nth: string) => `${word} ${Number(nth) + 1}`;
const named = (words: string) => () => words;

/** From the outside inwards; each is looked for in what the ones before it have left. Acts are numbered from 0. */
const NAMES: readonly Name[] = [
  [/^attempts\[(\d+)\]/, counted('attempt')],
  [/^jobs\[(\d+)\]/, counted('job')],
  [/^drafts\[(\d+)\]/, counted('draft')],
  [/^records\[(\d+)\]/, counted('record')],
  [/^keys\[(\d+)\]/, counted('key')],
  [/^signed\b/, named('the signed record')],
  [/\bseal\b/, named('its seal')],
  [/\bentries\[(\d+)\]/, (nth) => `act ${nth}`],
  [/\bpublic\.card\b/, named('the job card')],
  [/\bpublic\.rubric\.criteria\[(\d+)\]/, counted('the rubric, row')],
  [/\bpublic\.rubric\b/, named('the rubric')],
  [/\bpublic\.tests\b/, named('the tests of the job')],
  [/\bpublic\.limits\b/, named('the limits of the job')],
  [/\bhidden\.armature\.faults\[(\d+)\]/, counted('the armature, fault')],
  [/\bhidden\.fieldFrame\.faults\[(\d+)\]/, counted('the field frame, fault')],
  [/\bhidden\.brushPlate\.faults\[(\d+)\]/, counted('the brush plate, fault')],
  [/\bhidden\.bench\.faults\[(\d+)\]/, counted('the bench, fault')],
  [/\bhidden\.falseLeads\[(\d+)\]/, counted('false lead')],
  [/\bhidden\.wear\b/, named('wear')],
  [/\bhidden\b/, named('the hidden half of the job')],
  [/\b(?:public|scenario)\b/, named('the job')],
  [/\brecord\.outcome$/, named('the decision')],
  [/\bevidence\b/, named('the evidence')],
  [/^format$/, named('the kind of file')],
  [/^version$/, named('the version of the file')],
  [/^learner$/, named('the learner’s name')],
  [/^startedAt$/, named('when it was begun')],
];

/** @returns words such as “Attempt 1, act 40”, or '' where the place has no name of its own */
export function placeName(path: string): string {
  let rest = path.replace(/^[^:]*: /, '');
  const words: string[] = [];
  for (const [pattern, name] of NAMES) {
    const found = pattern.exec(rest);
    if (found === null) continue;
    words.push(name(found[1] ?? ''));
    rest = rest.slice(found.index + found[0].length);
  }
  return capital(words.join(', '));
}

/** What a file of the library holds, by where it lies. */
export function fileName(where: string): string {
  if (/(?:^|\/)scenarios\/parts\/[^/]+\.json$/.test(where)) return 'A kind of armature of the library';
  return /(?:^|\/)scenarios\/[^/]+\.json$/.test(where) ? 'A job of the library' : where;
}
