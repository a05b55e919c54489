/** Resistance as the trade writes it. @param ohm ohm, > 0, or no connection at all */
export function ohmWords(ohm: number | 'open'): string {
  if (ohm === 'open') return 'open';
  const [value, unit] =
    ohm < 1 ? [ohm * 1e3, 'mΩ'] : ohm < 1e3 ? [ohm, 'Ω'] : ohm < 1e6 ? [ohm / 1e3, 'kΩ'] : [ohm / 1e6, 'MΩ'];
  return `${Number(value.toPrecision(3))} ${unit}`;
}
