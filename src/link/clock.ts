/** The passing of real time, handed in by the app; tests hand in their own. */
export interface Clock {
  /** Real time from any fixed start, ms. */
  nowMs(): number;
  /**
   * Calls once after a while; 0 means with the next picture. Returns the way to call it off.
   */
  schedule(call: () => void, afterMs: number): () => void;
}
