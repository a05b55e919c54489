import type { ComponentChildren } from 'preact';
import type { RemedyDone } from '../../../bench/guide/guide.ts';
import type { Verdict } from '../../../bench/paper.ts';
import { Cautions } from '../../shared/Cautions.tsx';
import { limitWords } from '../../shared/limitWords.ts';
import { capital, mainsWords, partList, spoken, testWords } from '../../shared/words.ts';
import type { GuideLevel } from './guide/Guide.tsx';
import { LazyGuide } from './guide/LazyGuide.tsx';
import { LazyVerdictLeaf } from './LazyVerdictLeaf.tsx';
import { TestSheet, type TestSheetProps } from './TestSheet.tsx';

export type Leaf = 'card' | 'sheet' | 'verdict';
const LEAVES: readonly (readonly [Leaf, string])[] = [
  ['card', 'Job card'],
  ['sheet', 'Test sheet'],
  ['verdict', 'Verdict'],
];

export interface ClipboardProps extends TestSheetProps {
  readonly leaf: Leaf;
  readonly onLeaf: (leaf: Leaf) => void;
  readonly guide: GuideLevel;
  readonly onGuide: (level: GuideLevel) => void;
  readonly verdicts: readonly Verdict[];
  readonly remedies: readonly RemedyDone[];
  readonly onVerdict: (verdict: Verdict) => void;
  readonly onHandIn: () => void;
}

/** The papers of the job, one in front at a time; what is half written on the others stays. */
export function Clipboard(props: ClipboardProps) {
  return (
    <aside class="clip" aria-label="Papers">
      {props.job.mode === 'guided' ? (
        <LazyGuide
          job={props.job}
          seen={props.seen}
          lines={props.lines}
          remedies={props.remedies}
          verdicts={props.verdicts}
          vocabulary={props.vocabulary}
          level={props.guide}
          onLevel={props.onGuide}
        />
      ) : null}
      <div
        class="leaf-tabs"
        role="tablist"
        aria-label="Papers of this job"
        onKeyDown={(event) => arrowTabs(event, props)}
      >
        {LEAVES.map(([leaf, label]) => (
          <button
            key={leaf}
            type="button"
            role="tab"
            id={`tab-${leaf}`}
            class="leaf-tab"
            aria-selected={props.leaf === leaf}
            aria-controls={`leaf-${leaf}`}
            tabIndex={props.leaf === leaf ? 0 : -1}
            onClick={() => props.onLeaf(leaf)}
          >
            {label}
          </button>
        ))}
      </div>
      <LeafPanel leaf="card" front={props.leaf}>
        <CardLeaf {...props} />
      </LeafPanel>
      <LeafPanel leaf="sheet" front={props.leaf}>
        <TestSheet {...props} />
      </LeafPanel>
      <LeafPanel leaf="verdict" front={props.leaf}>
        <LazyVerdictLeaf {...props} front={props.leaf === 'verdict'} />
      </LeafPanel>
    </aside>
  );
}

function arrowTabs(event: KeyboardEvent, props: ClipboardProps): void {
  const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
  if (step === 0) return;
  const at = LEAVES.findIndex(([leaf]) => leaf === props.leaf);
  const [next] = LEAVES[(at + step + LEAVES.length) % LEAVES.length]!;
  props.onLeaf(next);
  document.getElementById(`tab-${next}`)?.focus();
}

interface LeafPanelProps {
  readonly leaf: Leaf;
  readonly front: Leaf;
  readonly children: ComponentChildren;
}

function LeafPanel({ leaf, front, children }: LeafPanelProps) {
  return (
    <div
      class="leaf paper"
      role="tabpanel"
      id={`leaf-${leaf}`}
      aria-labelledby={`tab-${leaf}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling panel must be reachable by keyboard
      tabIndex={0}
      hidden={leaf !== front}
    >
      {children}
    </div>
  );
}

function CardLeaf({ job, vocabulary }: ClipboardProps) {
  const limits = limitWords(job);
  return (
    <div class="card-leaf">
      <h2>{job.card.unit}</h2>
      <p class="card-workshop">{job.workshop}</p>
      <dl class="card-lines">
        <dt>Brought in by</dt>
        <dd>{job.card.broughtInBy}</dd>
        <dt>What it does</dt>
        <dd>{spoken(job.card.complaint, vocabulary)}</dd>
        <dt>Asked for</dt>
        <dd>{spoken(job.card.askedFor, vocabulary)}</dd>
        <dt>To be judged</dt>
        <dd>{partList(job.parts)}</dd>
        <dt>Tests allowed</dt>
        <dd>
          <ul class="card-tests">
            {job.tests.map((test) => (
              <li key={test}>{testWords(test, vocabulary)}</li>
            ))}
          </ul>
        </dd>
        {limits.length === 0 ? null : (
          <>
            <dt>Limits</dt>
            <dd>{spoken(capital(limits.join('; ')), vocabulary)}</dd>
          </>
        )}
        <dt>Mains</dt>
        <dd>{mainsWords(job.mains)}</dd>
      </dl>
      {job.parts.includes('armature') ? (
        <>
          <h3>Counting</h3>
          <p>
            {spoken(
              'Chalk one bar and call it 0. From it the count rises down the side that faces you, the way the bars move when the top comes towards you.',
              vocabulary,
            )}
          </p>
        </>
      ) : null}
      <h3>Mind this</h3>
      <Cautions />
    </div>
  );
}
