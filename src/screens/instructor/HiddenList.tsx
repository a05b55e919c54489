import { Button } from '../shared/Button.tsx';

/** One hidden fault in words. */
export interface Hidden {
  readonly key: string;
  readonly words: string;
  /** Where it is told apart from others without its severity; left out: the words themselves. */
  readonly name?: string;
}

export interface HiddenListProps {
  readonly title: string;
  /** Said where nothing is hidden. */
  readonly none: string;
  readonly hidden: readonly Hidden[];
  readonly onOpen: (nth: number) => void;
  readonly onTakeOut: (nth: number) => void;
}

/** Everything hidden on what lies open: each opens its place, and each can be taken out. */
export function HiddenList({ title, none, hidden, onOpen, onTakeOut }: HiddenListProps) {
  return (
    <>
      <h3>{title}</h3>
      {hidden.length === 0 ? <p>{none}</p> : null}
      <ul class="in-hidden">
        {hidden.map(({ key, words, name = words }, nth) => (
          <li key={key}>
            <Button kind="quiet" onPress={() => onOpen(nth)}>
              {words}
            </Button>
            <Button kind="quiet" label={`Take out: ${name}`} onPress={() => onTakeOut(nth)}>
              Take out
            </Button>
          </li>
        ))}
      </ul>
    </>
  );
}
