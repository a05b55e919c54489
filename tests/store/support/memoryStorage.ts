/** What a browser's `localStorage` does, without a browser. */
export class MemoryStorage implements Storage {
  [name: string]: unknown;
  private readonly kept = new Map<string, string>();

  get length(): number {
    return this.kept.size;
  }
  key(nth: number): string | null {
    return [...this.kept.keys()][nth] ?? null;
  }
  getItem(key: string): string | null {
    return this.kept.get(key) ?? null;
  }
  setItem(key: string, value: string): void {
    this.kept.set(key, value);
  }
  removeItem(key: string): void {
    this.kept.delete(key);
  }
  clear(): void {
    this.kept.clear();
  }
}
