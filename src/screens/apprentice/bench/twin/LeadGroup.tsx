import type { LeadView } from '../../../../bench/observation.ts';
import { isClip, type LeadId, leadSet } from '../../../../bench/places.ts';
import { LEAD_WORDS, placeWords } from '../../../../bench/placeWords.ts';
import { Button } from '../../../shared/Button.tsx';
import { capital, spoken } from '../../../shared/words.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';
import { TakeActs } from './TakeActs.tsx';
import { TouchActs } from './TouchActs.tsx';

export interface LeadGroupProps extends GroupProps {
  readonly lead: LeadId;
  /** True for the lead the tip keys move. */
  readonly inUse: boolean;
}

/** One lead: take it, put its tip somewhere, leave it somewhere. */
export function LeadGroup(props: LeadGroupProps) {
  const { lead, seen, vocabulary, geometry } = props;
  const view = seen.leads[lead];
  const touched = view.touches && spoken(placeWords(geometry, seen, view.touches), vocabulary);
  const state = `${stateWords(view, touched)}${props.inUse ? ' In use.' : ''}`;
  return (
    <Group title={capital(LEAD_WORDS[lead])} state={state}>
      {view.at === 'hand' ? <TouchActs {...props} /> : <TakeActs {...props} />}
      {view.at === 'holster' ? null : <LeaveActs {...props} />}
    </Group>
  );
}

function stateWords(view: LeadView, touched: string | null): string {
  const where = touched ? ` on ${touched}` : ', touching nothing';
  if (view.at === 'holster') return 'In its holster.';
  if (view.at === 'stand') return `In the stand${where}.`;
  if (view.at === 'clip') return `Clipped${where}.`;
  return `In the hand by the ${view.grip === 'tip' ? 'bare tip' : 'handle'}${where}.`;
}

function LeaveActs({ lead, seen, send }: LeadGroupProps) {
  const view = seen.leads[lead];
  const name = LEAD_WORDS[lead];
  const inHand = view.at === 'hand';
  const keep = isClip(lead) ? 'Clip it on' : 'Into the stand';
  return (
    <div class="acts">
      {inHand && view.touches ? (
        <Button keyHint="U" label={`Lift: ${name}`} onPress={() => send({ type: 'lead.lift', lead })}>
          Lift
        </Button>
      ) : null}
      {inHand && view.touches && leadSet(lead) === 'lamp' ? (
        <Button
          pressed={view.leaning}
          keyHint="E"
          label={`${view.leaning ? 'Ease off' : 'Lean on it'}: ${name}`}
          onPress={() => send({ type: 'lead.lean', lead, on: !view.leaning })}
        >
          {view.leaning ? 'Ease off' : 'Lean on it'}
        </Button>
      ) : null}
      {inHand && view.touches && leadSet(lead) !== 'lamp' ? (
        <Button keyHint="S" label={`${keep}: ${name}`} onPress={() => send({ type: 'lead.clamp', lead })}>
          {keep}
        </Button>
      ) : null}
      <Button
        keyHint="B"
        label={`To the holster: ${name}`}
        onPress={() => send({ type: 'lead.holster', lead })}
      >
        To the holster
      </Button>
    </div>
  );
}
