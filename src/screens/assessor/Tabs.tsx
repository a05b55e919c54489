import type { ComponentChildren } from 'preact';
import { useId, useRef } from 'preact/hooks';

export interface TabsProps<T extends string> {
  readonly name: string;
  readonly tabs: readonly { readonly key: T; readonly words: string }[];
  readonly current: T;
  readonly onChange: (key: T) => void;
  readonly children: ComponentChildren;
}

/** Leaves of which one is in sight; arrow keys turn them over. */
export function Tabs<T extends string>({ name, tabs, current, onChange, children }: TabsProps<T>) {
  const id = useId();
  const bar = useRef<HTMLDivElement>(null);
  const turn = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const at = tabs.findIndex(({ key }) => key === current);
    const next = (at + by + tabs.length) % tabs.length;
    onChange(tabs[next]!.key);
    const tab = bar.current?.children[next];
    if (tab instanceof HTMLElement) tab.focus();
  };
  return (
    <div class="as-tabs">
      <div ref={bar} class="as-tab-bar no-print" role="tablist" aria-label={name} onKeyDown={turn}>
        {tabs.map(({ key, words }) => (
          <button
            key={key}
            type="button"
            role="tab"
            id={`${id}-${key}`}
            aria-selected={key === current}
            aria-controls={`${id}-leaf`}
            tabIndex={key === current ? 0 : -1}
            onClick={() => onChange(key)}
          >
            {words}
          </button>
        ))}
      </div>
      <div id={`${id}-leaf`} class="as-leaf paper" role="tabpanel" aria-labelledby={`${id}-${current}`}>
        {children}
      </div>
    </div>
  );
}
