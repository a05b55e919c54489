import { type Tool, toolsOf } from '../../../../scenario/public/benchTools.ts';
import { Group } from './Group.tsx';
import type { GroupProps } from './groups.ts';
import { TOOL_NAMES } from './kit.ts';
import { ToolActs, toolState } from './ToolActs.tsx';

/** What is wanted now and then, each folded away until it is. */
const FOLDED: ReadonlySet<Tool> = new Set(['preparation', 'gauges', 'remedies', 'bench']);

/** Field frame and brush plate of the job: brought forward, put back, brushes apart or together. */
export function MatGroups(props: GroupProps) {
  return <Open {...props} tools={['fieldFrame', 'brushPlate']} />;
}

/** Insulation tester and millivolt drop, where the card allows them. */
export function RailGroups(props: GroupProps) {
  return <Open {...props} tools={['tester', 'drop']} />;
}

function Open({ tools, ...props }: GroupProps & { readonly tools: readonly Tool[] }) {
  return (
    <>
      {toolsOf(props.job)
        .filter((tool) => tools.includes(tool))
        .map((tool) => (
          <Group key={tool} title={TOOL_NAMES[tool]} state={toolState(tool, props)}>
            <ToolActs {...props} tool={tool} />
          </Group>
        ))}
    </>
  );
}

export function FoldedGroups(props: GroupProps) {
  return (
    <>
      {toolsOf(props.job)
        .filter((tool) => FOLDED.has(tool))
        .map((tool) => (
          <details key={tool} class="group group-folded">
            <summary>{TOOL_NAMES[tool]}</summary>
            <p class="group-state">{toolState(tool, props)}</p>
            <ToolActs {...props} tool={tool} />
          </details>
        ))}
    </>
  );
}
