import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Action } from '../../../bench/action.ts';
import type { LeadId } from '../../../bench/places.ts';
import type { Tool } from '../../../scenario/public/benchTools.ts';
import { Notice } from '../../shared/Notice.tsx';
import { spoken } from '../../shared/words.ts';
import type { BenchPageProps } from './BenchPage.tsx';
import { wishOf } from './keys.ts';
import type { PictureControl, SceneWishes } from './mountScene.ts';
import { Senses, seenWords } from './Senses.tsx';
import { ToolTray } from './ToolTray.tsx';
import type { GroupProps } from './twin/groups.ts';
import { LazyWordsPanel } from './twin/LazyWordsPanel.tsx';
import type { BenchView as Bench } from './useBench.ts';

export interface BenchViewProps extends BenchPageProps {
  readonly bench: Bench;
  readonly lead: LeadId | null;
  readonly onChooseLead: (lead: LeadId) => void;
  readonly onNote: () => void;
  readonly onKeys: () => void;
}

/** Picture of the bench, what the bench says, what there is to see and hear in words, and the panel of keys and words. */
export function BenchView(props: BenchViewProps) {
  const { bench, vocabulary } = props;
  const eye = useCloser();
  const [open, setOpen] = useState<Tool | null>(null);
  return (
    <section class="bench-side" aria-label="Bench">
      <div class="bench-stage">
        <Picture {...props} eye={eye} onTool={setOpen} />
        <div class="bench-remarks" role="status">
          {bench.remarks.map((remark) => (
            <Notice key={remark.id} kind={remark.kind} onDismiss={() => bench.dismiss(remark.id)}>
              {spoken(remark.sentence, vocabulary)}
            </Notice>
          ))}
        </div>
      </div>
      <ToolTray {...groupOf(props)} open={open} onOpen={setOpen} />
      <Senses {...props} eye={eye} />
      <Words {...props} />
    </section>
  );
}

/** What tray and panel work with; an act that went through is told from one that was refused. */
function groupOf({ bench, job, vocabulary }: BenchViewProps): GroupProps {
  const send = (action: Action) => bench.port.send(action).kind === 'done';
  return { job, seen: bench.seen, geometry: job.armature, vocabulary, send };
}

/** The panel is made when it is first opened, and keeps what was chosen in it after that. */
function Words(props: BenchViewProps) {
  const { bench, job, vocabulary, lead } = props;
  const wanted = useRef(false);
  wanted.current ||= props.wordsOpen;
  return (
    <details
      class="words"
      open={props.wordsOpen}
      onToggle={(event) => props.onWordsOpen(event.currentTarget.open)}
    >
      <summary>Work by buttons and words</summary>
      <p class="sense-seen">{seenWords(job, bench.seen, vocabulary).join(' ')}</p>
      {wanted.current ? <LazyWordsPanel {...groupOf(props)} lead={lead} /> : null}
    </details>
  );
}

/** How the bench is looked at. */
export interface Eye {
  readonly closer: boolean;
  readonly turn: () => void;
  readonly hang: Pick<SceneWishes, 'onReady' | 'onCloser'>;
}

function useCloser(): Eye {
  const [closer, setCloser] = useState(false);
  const picture = useRef<PictureControl | null>(null);
  const hang = useRef({
    onReady: (control: PictureControl) => {
      picture.current = control;
      setCloser(false);
    },
    onCloser: setCloser,
  });
  return { closer, turn: () => picture.current?.lookCloser(!closer), hang: hang.current };
}

type PictureProps = BenchViewProps & { readonly eye: Eye; readonly onTool: (tool: Tool) => void };

/** Host of the drawn bench; keys count only while it has the focus. */
function Picture(props: PictureProps) {
  const host = useRef<HTMLDivElement>(null);
  const { bench, mountScene, vocabulary, still, onTool } = props;
  const { hang } = props.eye;
  // At once: the picture takes longest, and everything else of the page is there already.
  useLayoutEffect(() => {
    if (!host.current) return;
    return mountScene(host.current, bench.port, { vocabulary, still, onTool, ...hang });
  }, [mountScene, bench.port, vocabulary, still, hang, onTool]);
  return (
    <div
      ref={host}
      class="bench-picture"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is the bench; it takes keys
      tabIndex={0}
      aria-label="The bench. Press the question mark for its keys; everything can also be done under “Work by buttons and words”."
      onKeyDown={(event) => onKey(event, props)}
    />
  );
}

function onKey(event: KeyboardEvent, props: PictureProps): void {
  if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return;
  const { seen } = props.bench;
  const context = { seen, geometry: props.job.armature, lead: props.lead };
  const wish = wishOf({ key: event.key, shift: event.shiftKey }, context);
  if (!wish) return;
  event.preventDefault();
  if (wish.kind === 'act') props.bench.port.send(wish.action);
  else if (wish.kind === 'choose') props.onChooseLead(wish.lead);
  else if (wish.kind === 'note') props.onNote();
  else if (wish.kind === 'closer') props.eye.turn();
  else props.onKeys();
}
