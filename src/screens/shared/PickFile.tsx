import { useRef } from 'preact/hooks';
import { Button } from './Button.tsx';

export interface PickFileProps {
  readonly children: string;
  readonly onPick: (file: File) => void;
}

/** A button that asks for one JSON file. */
export function PickFile({ children, onPick }: PickFileProps) {
  return <Picker words={children} many={false} onPicked={([file]) => (file ? onPick(file) : undefined)} />;
}

export interface PickFilesProps {
  readonly children: string;
  readonly onPick: (files: readonly File[]) => void;
}

/** A button that asks for JSON files, as many as are wanted. */
export function PickFiles({ children, onPick }: PickFilesProps) {
  return (
    <Picker words={children} many onPicked={(files) => (files.length > 0 ? onPick(files) : undefined)} />
  );
}

interface PickerProps {
  readonly words: string;
  readonly many: boolean;
  readonly onPicked: (files: readonly File[]) => void;
}

function Picker({ words, many, onPicked }: PickerProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button kind="quiet" onPress={() => input.current?.click()}>
        {words}
      </Button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        multiple={many}
        hidden
        aria-label={words}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          onPicked(files);
        }}
      />
    </>
  );
}
