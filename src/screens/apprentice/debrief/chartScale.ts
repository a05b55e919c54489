/** A round top for an axis that must hold a value: 1, 2 or 5 times a power of ten, in at most six steps. */
export function niceAxis(largest: number): { readonly top: number; readonly step: number } {
  if (!(largest > 0)) return { top: 1, step: 0.5 };
  const rough = largest / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((one) => one >= rough) ?? 10 * power;
  return { top: Math.ceil(largest / step - 1e-9) * step, step };
}

/** Steps of an axis from 0 to its top. */
export function ticks({ top, step }: { readonly top: number; readonly step: number }): readonly number[] {
  return Array.from({ length: Math.round(top / step) + 1 }, (_, index) =>
    Number((index * step).toPrecision(6)),
  );
}
