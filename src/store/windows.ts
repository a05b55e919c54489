/**
 * Two windows at the same bench would each think it stands as they left it. The browser's own locks let one in; where
 * there are none, the store still refuses the second window's first act.
 */
export type Locks = Pick<LockManager, 'request'>;

/**
 * Asks to be the one window that works on an attempt.
 * @returns how to let go of it, or null while another window has it. It is let go by itself when the page goes away.
 */
export function holdAttempt(
  id: string,
  locks: Locks | undefined = globalThis.navigator?.locks,
): Promise<(() => void) | null> {
  if (locks === undefined) return Promise.resolve(() => undefined);
  return new Promise((resolve, reject) => {
    const held = (lock: Lock | null): Promise<void> | null => {
      if (lock === null) {
        resolve(null);
        return null;
      }
      return new Promise((letGo) => resolve(() => letGo()));
    };
    locks.request(`slot-and-riser/attempt/${id}`, { ifAvailable: true }, held).catch(reject);
  });
}

export interface Room {
  readonly usedBytes: number;
  readonly mostBytes: number;
  /** True when the browser has promised not to clear it by itself. */
  readonly lasting: boolean;
}

/** How much room the browser gives, asking it on the way not to clear what is kept; null where it does not say. */
export async function room(
  storage: StorageManager | undefined = globalThis.navigator?.storage,
): Promise<Room | null> {
  if (storage?.estimate === undefined) return null;
  const lasting = (await storage.persisted()) || (await storage.persist());
  const { usage, quota } = await storage.estimate();
  return usage === undefined || quota === undefined ? null : { usedBytes: usage, mostBytes: quota, lasting };
}
