type Holder = Record<string, unknown>;

/** Steps of a path such as `entries[5].action.byDeg`. */
const stepsOf = (path: string): string[] => path.split(/[.[\]]+/).filter((step) => step !== '');

/** A copy through JSON, as a file makes it, with the value at one path replaced (or put there). */
export function altered<T>(value: T, path: string, to: unknown): T {
  const copy = JSON.parse(JSON.stringify(value)) as T;
  const steps = stepsOf(path);
  const last = steps.pop()!;
  const holder = steps.reduce<Holder>((here, step) => here[step] as Holder, copy as Holder);
  holder[last] = to;
  return copy;
}

/** Paths of every number inside a value, with the number. */
export function numbersIn(value: unknown, path = ''): { readonly path: string; readonly number: number }[] {
  if (typeof value === 'number') return [{ path, number: value }];
  if (value === null || typeof value !== 'object') return [];
  const inner = Array.isArray(value)
    ? value.map((item, nth): [string, unknown] => [`${path}[${nth}]`, item])
    : Object.entries(value).map(([key, item]): [string, unknown] => [
        path === '' ? key : `${path}.${key}`,
        item,
      ]);
  return inner.flatMap(([at, item]) => numbersIn(item, at));
}
