import { useRef } from 'preact/hooks';
import { Button } from './Button.tsx';

export interface PickFileProps {
  readonly children: string;
  readonly onPick: (file: File) => void;
}

/** A button that asks for one JSON file. */
export function PickFile(props: PickFileProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button kind="quiet" onPress={() => input.current?.click()}>
        {props.children}
      </Button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={props.children}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) props.onPick(file);
        }}
      />
    </>
  );
}
