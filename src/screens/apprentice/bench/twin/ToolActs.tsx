import { useState } from 'preact/hooks';
import { type Action, PREPARATIONS } from '../../../../bench/action.ts';
import { minutesOf } from '../../../../bench/memory.ts';
import { bookWords, dropWords, gaugeWords, matWords, testerWords } from '../../../../bench/toolWords.ts';
import { operables, type Touchable, touchables } from '../../../../bench/touchables.ts';
import { actionWords } from '../../../../bench/words.ts';
import type { Tool } from '../../../../scenario/public/benchTools.ts';
import { Button } from '../../../shared/Button.tsx';
import { SelectField } from '../../../shared/Field.tsx';
import { spoken } from '../../../shared/words.ts';
import { ClipActs } from './ClipActs.tsx';
import type { GroupProps } from './groups.ts';
import { belongs } from './kit.ts';

export interface ToolProps extends GroupProps {
  readonly tool: Tool;
}

/** How a thing of mat or rail stands right now, in a few words. */
export function toolState(tool: Tool, { seen, geometry, vocabulary }: GroupProps): string {
  const [frame, plate] = matWords(seen);
  const words: Readonly<Record<Tool, string>> = {
    preparation: `${seen.prepared.length} of ${PREPARATIONS.length} seen to.`,
    fieldFrame: frame || 'At the back of the mat.',
    brushPlate: plate || 'At the back of the mat.',
    tester: testerWords(seen.tester) || `Set to ${seen.tester.volt} V, button up.`,
    drop: dropWords(geometry, seen) || 'The feed is off.',
    gauges: gaugeWords(seen.gauge) || 'On the rail.',
    remedies: bookWords(seen) || 'No minutes have gone into work.',
    bench: bookWords(seen) || 'Bulb, leads and zero as they were found.',
  };
  return spoken(words[tool], vocabulary);
}

/** Everything that can be done with one thing of mat or rail now. */
export function ToolActs(props: ToolProps) {
  const { tool } = props;
  return (
    <>
      {tool === 'tester' || tool === 'drop' ? <ClipActs {...props} set={tool} /> : null}
      {tool === 'drop' ? (
        <PlacedAct {...props} name="Feed" does="Clamp" fits={(act) => act.type === 'drop.feed'} />
      ) : null}
      <ControlActs {...props} />
      {tool === 'brushPlate' ? <LeanActs {...props} /> : null}
      {tool === 'remedies' && props.job.parts.includes('armature') ? (
        <PlacedAct {...props} name="Riser" does="Resolder" fits={(act) => act.type === 'remedy.do'} />
      ) : null}
    </>
  );
}

/** Leaning on a lamp probe that lies on the plate: what a loose rivet answers to. */
function LeanActs({ seen, geometry, vocabulary, send }: ToolProps) {
  const leaning = (['lamp.1', 'lamp.2'] as const).filter((lead) => {
    const { at, touches } = seen.leads[lead];
    return at === 'hand' && touches?.startsWith('plate:') === true && touches !== 'plate:metal';
  });
  return (
    <div class="acts">
      {leaning.map((lead) => {
        const { leaning: on } = seen.leads[lead];
        const act: Action = { type: 'lead.lean', lead, on: !on };
        return (
          <Button key={lead} pressed={on} keyHint="E" onPress={() => send(act)}>
            {spoken(actionWords(geometry, seen, act), vocabulary)}
          </Button>
        );
      })}
    </div>
  );
}

/** Every act the bench offers with one control now, named as the log names it, with the minutes it takes by the book. */
function ControlActs(props: ToolProps) {
  const { seen, geometry, vocabulary, send, tool } = props;
  const all = operables(geometry, seen).find((one) => one.control === tool)?.actions ?? [];
  const offered = all.filter((action) => belongs(action, props.job));
  if (offered.length === 0) return <Nothing {...props} />;
  return (
    <div class="acts">
      {offered.map((action) => {
        const words = spoken(actionWords(geometry, seen, action), vocabulary);
        const minutes = minutesOf(action);
        return (
          <Button key={words} onPress={() => send(action)}>
            {words}
            {minutes > 0 ? <small class="book-minutes">{minutes} min</small> : null}
          </Button>
        );
      })}
    </div>
  );
}

/** Why nothing is offered, as far as anyone at the bench can tell. */
function Nothing({ tool, seen }: ToolProps) {
  if (tool === 'preparation' && seen.prepared.length > 0) return <p class="group-state">All seen to.</p>;
  if (tool === 'drop' && seen.drop.feed === null) return null;
  const why: Readonly<Partial<Record<Tool, string>>> = {
    gauges:
      'A hand must be free; the commutator is measured out of the cradle, a brush with its part in front of you.',
    remedies:
      'Both hands must be free and every lead off the part; the brush plate is worked on in front of you.',
    bench: 'Switch off first, and hang the leads up.',
  };
  return <p class="group-state">{why[tool] ?? 'Nothing can be done here as things stand.'}</p>;
}

interface PlacedProps extends ToolProps {
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
