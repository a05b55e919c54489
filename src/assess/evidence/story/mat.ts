import type { MatPart } from '../../../bench/action.ts';
import type { FoundPlace } from '../../../bench/paper.ts';
import { acts, type Film } from '../../film.ts';
import type { Spell } from '../gather.ts';
import { Classes } from '../mat/classes.ts';
import { matDiffering } from '../mat/gather.ts';
import type { MatJudged, MatJudgedFinding } from '../mat/judge.ts';
import { type MatNextReading, matQuestions, nextMatReadings } from '../mat/next.ts';
import {
  fieldKind,
  firstSpell,
  type MatKind,
  matEvidence,
  matRestedOf,
  plateKind,
} from '../mat/ofAttempt.ts';
import type { MatEvidence } from '../mat/reading.ts';
import type { EvidenceStory, FindingStory, JudgedStory, MatNext, StoryPlace } from './shape.ts';
import { type Told, toldBy, WORTH_READING } from './told.ts';

/** What the readings had to say of field frame or brush plate as it came in. Takes a while, as for the armature. */
export function matStory(film: Film, part: MatPart): EvidenceStory {
  const verdict = acts(film, 'verdict.write').findLast(({ action }) => action.verdict.part === part);
  const whole = firstSpell(film, part);
  const spell: Spell = { ...whole, before: Math.min(whole.before, verdict?.n ?? whole.before) };
  const evidence = matEvidence(film, part, spell);
  const told =
    part === 'fieldFrame'
      ? follow(film, part, evidence, fieldKind(film, spell))
      : follow(film, part, evidence, plateKind(film, spell));
  const rested = matRestedOf(film, part);
  return {
    part,
    from: evidence.from,
    bars: film.design.bars,
    chalkedBar: null,
    judged: rested === null ? null : judgedStory(rested.judged),
    ...told,
    differing: matDiffering(film, part, spell),
    endedByRemedy: Number.isFinite(whole.before),
  };
}

/** Readings and looks one after another, weighed after each. */
function follow<F>(
  film: Film,
  part: MatPart,
  evidence: MatEvidence,
  { model, tellingOf }: MatKind<F>,
): Omit<Told, 'doubt'> & Pick<EvidenceStory, 'next'> {
  const { readings, looks } = evidence;
  const steps = [...readings, ...looks.values()].sort((a, b) => a.entry - b.entry);
  let groups = model.weigh(upTo(evidence, -1));
  const classes = new Classes(model.everyFault, tellingOf);
  const fields = [classes.field(groups)];
  for (const { entry } of steps) {
    groups = model.weigh(upTo(evidence, entry));
    fields.push(classes.field(groups));
  }
  const { doubt, ...told } = toldBy(
    steps.map((reading) => ({ reading, ampere: null })),
    fields,
  );
  const questions = matQuestions(part, film.scenario.public.tests);
  const [best] = nextMatReadings(model, groups, classes, questions, readings);
  return { ...told, next: best === undefined ? null : worthTaking(best, doubt) };
}

function worthTaking({ question, bits }: MatNextReading, doubt: number): MatNext | null {
  return bits < WORTH_READING ? null : { question, share: Math.min(1, bits / doubt) };
}

function upTo({ readings, looks, from }: MatEvidence, entry: number): MatEvidence {
  const early = <T extends { readonly entry: number }>(one: T) => one.entry <= entry;
  return {
    readings: readings.filter(early),
    looks: new Map([...looks].filter(([, look]) => early(look))),
    from,
  };
}

function judgedStory({ judgement, findings, missed }: MatJudged): JudgedStory {
  return { judgement, findings: findings.map(findingStory), missed: missed.length };
}

function findingStory({ finding, right, condition, place, before }: MatJudgedFinding): FindingStory {
  const claim = { condition: finding.condition, mark: markOf(finding.place) };
  return { claim, right, condition, place, before };
}

function markOf(place: FoundPlace): StoryPlace | null {
  if (place.kind === 'branch') return { kind: 'branch', brushes: [place.brush] };
  return place.kind === 'holder' ? place : null;
}
