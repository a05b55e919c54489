import { useEffect, useState } from 'preact/hooks';
import type { Action } from '../../../bench/action.ts';
import type { RemedyDone } from '../../../bench/guide/guide.ts';
import type { SheetLine, Verdict } from '../../../bench/paper.ts';
import type { BenchPort, Breach } from '../../../bench/port.ts';
import type { Job } from '../../../scenario/public/job.ts';
import type { Vocabulary } from '../../shared/words.ts';
import { BenchBar } from './BenchBar.tsx';
import type { Question } from './BenchDialogs.tsx';
import { BenchView } from './BenchView.tsx';
import { Clipboard, type Leaf } from './Clipboard.tsx';
import type { GuideLevel } from './guide/Guide.tsx';
import { LazyBenchDialogs } from './LazyBenchDialogs.tsx';
import type { MountScene } from './mountScene.ts';
import { useBench } from './useBench.ts';
import { useLeadInUse } from './useLeadInUse.ts';
import './bench.css';

export interface BenchPageProps {
  readonly job: Job;
  readonly port: BenchPort;
  /** Lines already on the sheet when the page opens, oldest first. */
  readonly written: readonly SheetLine[];
  /** Verdicts already written when the page opens, the last for each part. */
  readonly verdicts: readonly Verdict[];
  /** Remedies already done when the page opens, in order. */
  readonly remedies: readonly RemedyDone[];
  readonly mountScene: MountScene;
  /** Calls back with one caption per sound; returns the way to stop. */
  readonly captions: (listener: (line: string) => void) => () => void;
  /** Calls back with breaches that come about by time alone; returns the way to stop. */
  readonly overhear: (listener: (breach: Breach) => void) => () => void;
  readonly vocabulary: Vocabulary;
  readonly still: boolean;
  readonly muted: boolean;
  readonly onMuted: (muted: boolean) => void;
  readonly wordsOpen: boolean;
  readonly onWordsOpen: (open: boolean) => void;
  readonly guide: GuideLevel;
  readonly onGuide: (level: GuideLevel) => void;
  readonly onSettings: () => void;
  readonly onLeave: () => void;
  /** The job was handed in, or a critical act has ended the attempt and the learner goes on to the debrief. */
  readonly onFinished: () => void;
}

/** The apprentice at the bench: picture, words and keys on one side, paper on the other. */
export function BenchPage(props: BenchPageProps) {
  const { job } = props;
  const paper = usePaper(props);
  const bench = useBench(props, paper.note);
  const [leaf, setLeaf] = useState<Leaf>('sheet');
  const [question, setQuestion] = useState<Question>(null);
  const lead = useLeadInUse(bench.seen);
  const [noteAsked, setNoteAsked] = useState(0);
  const toBench = () => document.querySelector<HTMLElement>('.bench-picture')?.focus();
  usePausedWhileHidden(props, setQuestion);
  const write = (line: SheetLine) => bench.port.send({ type: 'sheet.write', line }).kind === 'done';
  const toNote = () => {
    setLeaf('sheet');
    setNoteAsked((asked) => asked + 1);
  };
  return (
    <div class="bench-page">
      <BenchBar {...props} onPause={() => setQuestion('pause')} onKeys={() => setQuestion('keys')} />
      <main class="bench-main">
        <BenchView
          {...props}
          bench={bench}
          lead={lead.inUse}
          onChooseLead={lead.choose}
          onNote={toNote}
          onKeys={() => setQuestion('keys')}
        />
        <Clipboard
          leaf={leaf}
          onLeaf={setLeaf}
          guide={props.guide}
          onGuide={props.onGuide}
          job={job}
          seen={bench.seen}
          lines={paper.lines}
          verdicts={paper.verdicts}
          remedies={paper.remedies}
          vocabulary={props.vocabulary}
          noteAsked={noteAsked}
          onNoted={toBench}
          onWrite={write}
          onVerdict={(verdict) => void bench.port.send({ type: 'verdict.write', verdict })}
          onHandIn={() => setQuestion('handIn')}
        />
      </main>
      <LazyBenchDialogs
        question={bench.seen.stopped ? 'stopped' : question}
        seen={bench.seen}
        port={bench.port}
        job={job}
        verdicts={paper.verdicts}
        vocabulary={props.vocabulary}
        onAnswered={() => setQuestion(null)}
        onFinished={props.onFinished}
      />
    </div>
  );
}

interface Paper {
  readonly lines: readonly SheetLine[];
  readonly verdicts: readonly Verdict[];
  readonly remedies: readonly RemedyDone[];
  readonly note: (action: Action) => void;
}

/** What stands on the paper, and what was done to the parts: from before the page opened, and from every act since. */
function usePaper(props: BenchPageProps): Paper {
  const [lines, setLines] = useState(props.written);
  const [verdicts, setVerdicts] = useState(props.verdicts);
  const [remedies, setRemedies] = useState(props.remedies);
  const note = (action: Action) => {
    if (action.type === 'sheet.write') setLines((before) => [...before, action.line]);
    if (action.type === 'verdict.write') setVerdicts((before) => replaced(before, action.verdict));
    if (action.type === 'remedy.do') {
      const { remedy, bar = null } = action;
      setRemedies((before) => [...before, { remedy, bar, linesBefore: lines.length }]);
    }
    if (action.type === 'job.handIn') props.onFinished();
  };
  return { lines, verdicts, remedies, note };
}

function replaced(before: readonly Verdict[], verdict: Verdict): readonly Verdict[] {
  return [...before.filter(({ part }) => part !== verdict.part), verdict];
}

/** Practice stands still while nobody can see it; assessed time runs on and the gap is on the record. */
function usePausedWhileHidden({ job, port }: BenchPageProps, ask: (question: Question) => void): void {
  useEffect(() => {
    const follow = () => {
      if (!document.hidden || job.mode === 'assessed') return;
      port.pause();
      ask('pause');
    };
    document.addEventListener('visibilitychange', follow);
    return () => document.removeEventListener('visibilitychange', follow);
  }, [port, job.mode]);
}
