/** Simulated time as m:ss, from milliseconds. */
export function clock(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** Simulated time in words for a record, from milliseconds. */
export function minutesWords(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  if (minutes < 1) return 'under a minute';
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}

const MOMENT = /(^|[^"“])(\d{4}-\d\d-\d\dT\d\d:\d\d[\d:.]*(?:Z|[+-]\d\d:\d\d))/g;

/** A sentence with the moments in it as the reader writes them; what is quoted stays as it came. */
export function withDays(sentence: string): string {
  return sentence.replace(MOMENT, (_, before: string, iso: string) => `${before}${dayWords(iso)}`);
}

/** Day and time of an ISO 8601 moment as the reader writes it; the text itself when it is no date. */
export function dayWords(iso: string): string {
  const at = new Date(iso);
  return Number.isNaN(at.getTime())
    ? iso
    : at.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
