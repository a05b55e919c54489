import { useEffect, useId, useRef } from 'preact/hooks';
import { type Tool, toolsOf } from '../../../scenario/public/benchTools.ts';
import { Button } from '../../shared/Button.tsx';
import type { GroupProps } from './twin/groups.ts';
import { TOOL_NAMES } from './twin/kit.ts';
import { ToolActs, toolState } from './twin/ToolActs.tsx';
import './toolTray.css';

export interface ToolTrayProps extends GroupProps {
  /** The tool whose drawer stands open, or null. */
  readonly open: Tool | null;
  readonly onOpen: (tool: Tool | null) => void;
}

/** With so many drawers the row has no room for its own name. */
const ROOMY = 7;

/** What lies beside the growler, under the picture: press a name and its drawer opens. */
export function ToolTray({ open, onOpen, ...group }: ToolTrayProps) {
  const id = useId();
  const drawer = useRef<HTMLDivElement>(null);
  // It may have been opened by a press on the picture, with the tray out of sight.
  useEffect(() => {
    if (open !== null) drawer.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  const tools = toolsOf(group.job);
  return (
    <section class="tray" aria-label="Beside the growler">
      <div class="tray-names">
        {tools.length < ROOMY ? (
          <span class="tray-lead" aria-hidden="true">
            Beside the growler
          </span>
        ) : null}
        {tools.map((tool) => (
          <button
            key={tool}
            type="button"
            class="tray-name"
            aria-expanded={open === tool}
            aria-controls={id}
            onClick={() => onOpen(open === tool ? null : tool)}
          >
            {TOOL_NAMES[tool]}
          </button>
        ))}
      </div>
      <div ref={drawer} class="tray-drawer group" id={id} hidden={open === null}>
        {open === null ? null : (
          <>
            <div class="tray-head">
              <p class="group-state">{toolState(open, group)}</p>
              <Button kind="quiet" label={`Close: ${TOOL_NAMES[open]}`} onPress={() => onOpen(null)}>
                Close
              </Button>
            </div>
            <ToolActs key={open} {...group} tool={open} />
          </>
        )}
      </div>
    </section>
  );
}
