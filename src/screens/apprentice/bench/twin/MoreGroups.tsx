import { useState } from 'preact/hooks';
import type { Action } from '../../../../bench/action.ts';
import { bookWords, dropWords, gaugeWords, matWords, testerWords } from '../../../../bench/toolWords.ts';
import { type Control, operables, type Touchable, touchables } from '../../../../bench/touchables.ts';
import { actionWords } from '../../../../bench/words.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { spoken } from '../../../shared/words.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';

/** Field frame and brush plate of the job: brought forward, put back, brushes apart or together. */
export function MatGroups(props: GroupProps) {
  const { mat } = props.seen;
  const [frame = '', plate = ''] = matWords(props.seen);
  return (
    <>
      {mat.fieldFrame === 'absent' ? null : (
        <Group title="Field frame" state={spoken(frame || 'At the back of the mat.', props.vocabulary)}>
          <ControlActs {...props} control="fieldFrame" />
        </Group>
      )}
      {mat.brushPlate === 'absent' ? null : (
        <Group title="Brush plate" state={spoken(plate || 'At the back of the mat.', props.vocabulary)}>
          <ControlActs {...props} control="brushPlate" />
        </Group>
      )}
    </>
  );
}

/** Insulation tester and millivolt drop, where the card allows them. */
export function RailGroups(props: GroupProps) {
  const { seen, geometry, vocabulary } = props;
  return (
    <>
      {seen.tester.at === 'absent' ? null : (
        <Group
          title="Insulation tester"
          state={spoken(testerWords(seen.tester) || `Set to ${seen.tester.volt} V, button up.`, vocabulary)}
        >
          <ControlActs {...props} control="tester" />
        </Group>
      )}
      {seen.drop.at === 'absent' ? null : (
        <Group
          title="Millivolt drop"
          state={spoken(dropWords(geometry, seen) || 'The feed is off.', vocabulary)}
        >
          <ControlActs {...props} control="drop" />
          <PlacedAct {...props} name="Feed" does="Clamp" fits={(act) => act.type === 'drop.feed'} />
        </Group>
      )}
    </>
  );
}

/** What is wanted now and then, each folded away until it is. */
export function FoldedGroups(props: GroupProps) {
  const { seen, vocabulary } = props;
  const book = spoken(bookWords(seen), vocabulary) || 'No minutes have gone into work.';
  return (
    <>
      <Folded title="Before power" state={`${seen.prepared.length} seen to.`}>
        <ControlActs {...props} control="preparation" />
      </Folded>
      <Folded title="Gauges" state={spoken(gaugeWords(seen.gauge), vocabulary) || 'On the rail.'}>
        <ControlActs {...props} control="gauges" />
      </Folded>
      <Folded title="Remedies" state={book}>
        <ControlActs {...props} control="remedies" />
        <PlacedAct {...props} name="Riser" does="Resolder" fits={(act) => act.type === 'remedy.do'} />
      </Folded>
      <Folded title="Put the bench right" state={book}>
        <ControlActs {...props} control="bench" />
      </Folded>
    </>
  );
}

function Folded({ title, state, children }: Parameters<typeof Group>[0]) {
  return (
    <details class="group">
      <summary>{title}</summary>
      <p class="group-state">{state}</p>
      {children}
    </details>
  );
}

/** Brushes and brush plate are worked on only where there are any: a job of an armature alone offers nothing for them. */
function belongs(action: Action, { mat }: GroupProps['seen']): boolean {
  const ofPlate =
    (action.type === 'remedy.do' &&
      (action.remedy === 'cleanPlateInsulation' || action.remedy === 'tightenRivets')) ||
    (action.type === 'gauge.read' && action.gauge === 'brushLength');
  return !ofPlate || mat.brushPlate !== 'absent';
}

/** Every act the bench offers with one control now, named as the log names it. */
function ControlActs(props: GroupProps & { readonly control: Control }) {
  const { seen, geometry, vocabulary, send, control } = props;
  const all = operables(geometry, seen).find((one) => one.control === control)?.actions ?? [];
  const offered = all.filter((action) => belongs(action, seen));
  if (offered.length === 0) return <p class="group-state">Nothing can be done here as things stand.</p>;
  return (
    <div class="acts">
      {offered.map((action) => {
        const words = spoken(actionWords(geometry, seen, action), vocabulary);
        return (
          <Button key={words} onPress={() => send(action)}>
            {words}
          </Button>
        );
      })}
    </div>
  );
}

interface PlacedProps extends GroupProps {
  readonly name: string;
  readonly does: string;
  readonly fits: (action: Touchable['actions'][number]) => boolean;
}

/** An act that belongs to a place, chosen from all the bench offers now. */
function PlacedAct({ seen, geometry, vocabulary, send, name, does, fits }: PlacedProps) {
  const [chosen, choose] = useState('');
  const offered: readonly Action[] = touchables(geometry, seen).flatMap(({ actions }) =>
    actions.filter(fits),
  );
  const options = offered.map((action) => ({
    value: JSON.stringify(action),
    label: spoken(actionWords(geometry, seen, action), vocabulary),
  }));
  const at = Math.max(
    0,
    options.findIndex(({ value }) => value === chosen),
  );
  const action = offered[at];
  if (!action) return null;
  return (
    <div class="touch">
      <SelectField label={name} value={options[at]!.value} options={options} onChange={choose} />
      <Button onPress={() => send(action)}>{does}</Button>
    </div>
  );
}
