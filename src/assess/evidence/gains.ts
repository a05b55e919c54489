/** Points to which each step between two listed errors is divided about the likeliest. */
const FINE = 8;

/**
 * Logarithm of the mean likelihood over the error common to all readings, for one row of likelihoods. After many
 * readings the likelihood is far narrower than the steps between the listed errors; its logarithm is as good as a
 * parabola through three of them, which is followed about the highest.
 * @param logs row by row, by evenly spaced errors
 */
export function overGains(logs: Float64Array, row: number, errors: number): number {
  const from = row * errors;
  let best = 0;
  for (let g = 1; g < errors; g++) if (logs[from + g]! > logs[from + best]!) best = g;
  const middle = Math.max(1, Math.min(errors - 2, best));
  const at = logs[from + middle]!;
  const slope = (logs[from + middle + 1]! - logs[from + middle - 1]!) / 2;
  const bend = logs[from + middle + 1]! + logs[from + middle - 1]! - 2 * at;
  // The highest of the parabola within the two steps it spans, so that no power runs over.
  const peak = bend < 0 ? Math.max(-1, Math.min(1, -slope / bend)) : slope > 0 ? 1 : -1;
  const most = at + slope * peak + (bend * peak * peak) / 2;
  let sum = 0;
  for (let k = -FINE; k < FINE; k++) {
    const x = (k + 0.5) / FINE;
    sum += Math.exp(at + slope * x + (bend * x * x) / 2 - most) / FINE;
  }
  for (let g = 0; g < errors - 1; g++) {
    if (g === middle - 1 || g === middle) continue;
    sum += (Math.exp(logs[from + g]! - most) + Math.exp(logs[from + g + 1]! - most)) / 2;
  }
  return most + Math.log(sum / (errors - 1));
}
