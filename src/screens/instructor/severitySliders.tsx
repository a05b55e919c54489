import { SliderField } from '../shared/Field.tsx';
import { ohmWords } from './say.ts';

/** Resistance of any fault, ohm, where its kind says nothing narrower. */
const ANY_OHM = [1e-6, 1e9] as const;

/** How bad a fault is by its resistance, in steps of the logarithm. */
export function OhmSlider(props: {
  /** Least and most, ohm. */
  readonly range: readonly [number, number] | undefined;
  readonly ohm: number;
  readonly onInput: (ohm: number) => void;
}) {
  const [least, most] = props.range ?? ANY_OHM;
  return (
    <SliderField
      label="How bad: resistance"
      value={Math.log10(props.ohm)}
      min={Math.log10(least)}
      max={Math.log10(most)}
      step={0.05}
      words={ohmWords(props.ohm)}
      onInput={(log) => props.onInput(Number((10 ** log).toPrecision(2)))}
    />
  );
}

/** A share of a coil, 0 to 1. */
export function ShareSlider(props: {
  readonly label: string;
  readonly share: number;
  readonly onInput: (share: number) => void;
}) {
  return (
    <SliderField
      label={props.label}
      value={props.share}
      min={0}
      max={1}
      step={0.05}
      words={`${Math.round(100 * props.share)} %`}
      onInput={props.onInput}
    />
  );
}
