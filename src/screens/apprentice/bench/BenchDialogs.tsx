import { useEffect } from 'preact/hooks';
import type { Observation } from '../../../bench/observation.ts';
import type { Verdict } from '../../../bench/paper.ts';
import type { BenchPort } from '../../../bench/port.ts';
import type { Job } from '../../../scenario/public/job.ts';
import { Button } from '../../shared/Button.tsx';
import { Dialog } from '../../shared/Dialog.tsx';
import { VerdictWords } from '../../shared/VerdictWords.tsx';
import { partWords, spoken, type Vocabulary } from '../../shared/words.ts';
import { KEY_LIST } from './keys.ts';

/** What is being asked of the learner over the bench, or null. */
export type Question = 'pause' | 'keys' | 'handIn' | 'stopped' | null;

export interface BenchDialogsProps {
  readonly question: Question;
  readonly seen: Observation;
  readonly port: BenchPort;
  readonly job: Job;
  readonly verdicts: readonly Verdict[];
  readonly vocabulary: Vocabulary;
  readonly onAnswered: () => void;
  readonly onFinished: () => void;
}

export function BenchDialogs(props: BenchDialogsProps) {
  if (props.question === 'pause') return <PauseDialog {...props} />;
  if (props.question === 'keys')
    return <KeysDialog vocabulary={props.vocabulary} onClose={props.onAnswered} />;
  if (props.question === 'handIn') return <HandInDialog {...props} />;
  return props.question === 'stopped' ? <StoppedDialog {...props} /> : null;
}

function PauseDialog({ port, onAnswered }: BenchDialogsProps) {
  useEffect(() => {
    port.pause();
    return () => port.resume();
  }, [port]);
  return (
    <Dialog title="The bench stands still" onClose={onAnswered}>
      <p>No time passes, nothing warms or cools. Everything lies as you left it.</p>
      <div class="dialog-acts">
        <Button kind="main" onPress={onAnswered}>
          Carry on
        </Button>
      </div>
    </Dialog>
  );
}

function KeysDialog({
  vocabulary,
  onClose,
}: {
  readonly vocabulary: Vocabulary;
  readonly onClose: () => void;
}) {
  return (
    <Dialog title="Keys at the bench" onClose={onClose}>
      <p>They count while the bench has the focus: click it, or reach it with the Tab key.</p>
      <dl class="key-list">
        {KEY_LIST.map(([keys, does]) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{spoken(does, vocabulary)}</dd>
          </div>
        ))}
      </dl>
      <div class="dialog-acts">
        <Button kind="main" onPress={onClose}>
          Back to the bench
        </Button>
      </div>
    </Dialog>
  );
}

function HandInDialog({ port, seen, verdicts, job, vocabulary, onAnswered }: BenchDialogsProps) {
  const handIn = () => {
    onAnswered();
    port.send({ type: 'job.handIn' });
  };
  return (
    <Dialog title="Hand the job in?" onClose={onAnswered}>
      <p>This is what stands on the sheet. After this the bench is closed and the marks are worked out.</p>
      {job.parts.map((part) => {
        const verdict = verdicts.find((one) => one.part === part);
        return (
          <section key={part} aria-label={partWords(part)}>
            <h3>{partWords(part)}</h3>
            {verdict ? (
              <VerdictWords verdict={verdict} bars={job.armature.bars} vocabulary={vocabulary} />
            ) : (
              <p>No verdict is written on this part.</p>
            )}
          </section>
        );
      })}
      {seen.selector === 'off' ? null : <p>The selector is still on {seen.selector.toUpperCase()}.</p>}
      <div class="dialog-acts">
        <Button kind="main" onPress={handIn}>
          Hand it in
        </Button>
        <Button onPress={onAnswered}>Not yet</Button>
      </div>
    </Dialog>
  );
}

function StoppedDialog({ seen, vocabulary, onFinished }: BenchDialogsProps) {
  return (
    <Dialog title="Stopped" kind="alarm">
      <p class="stopped-sentence">{spoken(seen.stopped?.sentence ?? '', vocabulary)}</p>
      <p>
        The bench has been isolated. In a workshop this could have hurt or killed someone, so the attempt ends
        here and the outcome is <strong>not yet</strong>. The debrief shows what led up to it.
      </p>
      <div class="dialog-acts">
        <Button kind="main" onPress={onFinished}>
          Go to the debrief
        </Button>
      </div>
    </Dialog>
  );
}
