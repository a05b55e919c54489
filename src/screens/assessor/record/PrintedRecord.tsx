import {
  type AssessorRecord,
  EVIDENCE_RULES,
  type EvidenceItem,
  pointsAfter,
  totalAfter,
} from '../../../records/record.ts';
import { Cautions, FiguresNote } from '../../shared/Cautions.tsx';
import { dayWords } from '../../shared/time.ts';
import { modeWords, spoken, type Vocabulary } from '../../shared/words.ts';
import { decisionWords, metWords, RULE_WORDS, tidy } from '../say.ts';

export interface PrintedRecordProps {
  readonly record: AssessorRecord;
  readonly vocabulary: Vocabulary;
}

/** A signed record on paper: who, on what evidence, which decision, signed with which key, and what that cannot stop. */
export function PrintedRecord({ record, vocabulary }: PrintedRecordProps) {
  return (
    <article class="as-printed paper" aria-labelledby="as-record-title">
      <header>
        <p class="as-kind">Assessor’s record</p>
        <h1 id="as-record-title">{record.learner.name}</h1>
        <p class={`as-outcome as-outcome-${record.outcome}`}>
          <strong>
            {record.outcome === 'competent' ? '✓' : '○'} {decisionWords(record.outcome)}
          </strong>
          {record.outcome === 'competent' ? '' : ' competent'}, in the judgement of {record.assessor},{' '}
          {dayWords(record.signedAt)}
        </p>
      </header>
      <LearnerLines record={record} />
      {record.evidence.map((item) => (
        <EvidenceTable key={item.attempt} item={item} record={record} vocabulary={vocabulary} />
      ))}
      <CriteriaTable record={record} />
      <Observations record={record} />
      <Signature record={record} />
      <footer>
        <Cautions />
        <FiguresNote />
      </footer>
    </article>
  );
}

function LearnerLines({ record }: { readonly record: AssessorRecord }) {
  const { learner } = record;
  return (
    <dl class="card-lines as-lines">
      <dt>Known by</dt>
      <dd>{learner.identifiedBy}</dd>
      <dt>Declaration</dt>
      <dd>
        {learner.declaration
          ? `“${learner.declaration.text}” (${dayWords(learner.declaration.at)})`
          : 'None given'}
      </dd>
      <dt>Adjustments</dt>
      <dd>{record.adjustments.length > 0 ? record.adjustments.join('; ') : 'None'}</dd>
      <dt>The evidence is</dt>
      <dd>
        {EVIDENCE_RULES.map(
          (rule) => `${record.rulesOfEvidence[rule] ? '✓' : '✕ not'} ${RULE_WORDS[rule][0].toLowerCase()}`,
        ).join(', ')}
      </dd>
    </dl>
  );
}

interface EvidenceTableProps extends PrintedRecordProps {
  readonly item: EvidenceItem;
}

function EvidenceTable({ item, record, vocabulary }: EvidenceTableProps) {
  const { marks } = item;
  const why = (mark: string) =>
    record.changes.filter((change) => change.attempt === item.attempt && change.mark === mark);
  return (
    <section class="as-evidence" aria-label={item.job}>
      <h2>{item.job}</h2>
      <p>
        {dayWords(item.startedAt)}, {modeWords(item.mode).toLowerCase()}. {item.replay.agreed ? '✓' : '✕'}{' '}
        {item.replay.sentence} {item.supervision ?? ''}
      </p>
      {item.rubricChanges.length > 0 ? (
        <>
          <p>Changed from the built-in rubric:</p>
          <ul>
            {item.rubricChanges.map((sentence) => (
              <li key={sentence}>{spoken(sentence, vocabulary)}</li>
            ))}
          </ul>
        </>
      ) : null}
      {marks.stoppedBy ? (
        <p class="outcome-stopped">
          <strong>✕ Stopped at act {marks.stoppedBy.entry}.</strong>{' '}
          {spoken(marks.stoppedBy.breach.sentence, vocabulary)}
        </p>
      ) : null}
      <table class="as-stands">
        <caption>
          {tidy(totalAfter(record, item))} of {tidy(marks.of)} marks
          {record.changes.some(({ attempt }) => attempt === item.attempt)
            ? `; ${tidy(marks.earned)} as computed`
            : ''}
        </caption>
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">Computed</th>
            <th scope="col">Stands</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {marks.marks.map((mark) => (
            <tr key={mark.id}>
              <th scope="row">{spoken(mark.title, vocabulary)}</th>
              <td>
                {tidy(mark.earned)} of {tidy(mark.of)}
              </td>
              <td>{tidy(pointsAfter(record, item.attempt, mark))}</td>
              <td>
                {spoken(mark.sentence, vocabulary)}
                {why(mark.id).map((change) => (
                  <span key={change.at} class="as-mark-change">
                    Changed by the assessor from {tidy(change.from)} to {tidy(change.to)}: {change.reason}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function CriteriaTable({ record }: { readonly record: AssessorRecord }) {
  return (
    <table class="as-criteria-table">
      <caption>Criteria: {record.criteria.set}</caption>
      <thead>
        <tr>
          <th scope="col">Criterion</th>
          <th scope="col">Judged</th>
          <th scope="col">Note</th>
        </tr>
      </thead>
      <tbody>
        {record.criteria.judgements.map((judgement) => (
          <tr key={judgement.criterion}>
            <th scope="row">{judgement.title}</th>
            <td>{metWords(judgement.met)}</td>
            <td>{judgement.note}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Observations({ record }: { readonly record: AssessorRecord }) {
  if (record.remarks.length === 0) return null;
  return (
    <section aria-label="The assessor’s own observations">
      <h2>The assessor’s own observations</h2>
      <ul>
        {record.remarks.map((remark) => (
          <li key={remark.at}>
            {remark.text} ({dayWords(remark.at)}
            {remark.about ? `, at act ${remark.about.entry}` : ''})
          </li>
        ))}
      </ul>
    </section>
  );
}

function Signature({ record }: { readonly record: AssessorRecord }) {
  return (
    <section class="as-signature" aria-label="Signature">
      <h2>Signed</h2>
      <p>
        {record.assessor}, {dayWords(record.signedAt)}. Fingerprint of the key:
      </p>
      <p>
        <code class="as-print">{record.signedWith.fingerprint}</code>
      </p>
      <h3>What this signature cannot stop</h3>
      <ul>
        {record.limits.map((limit) => (
          <li key={limit}>{limit}</li>
        ))}
      </ul>
    </section>
  );
}
