import { FIRST_SETTINGS, type Settings } from '../screens/shell.ts';

const KEY = 'slot-and-riser/settings';

/** Settings of this browser; whatever cannot be read falls back to the first settings, key by key. */
export function loadSettings(): Settings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return FIRST_SETTINGS;
    const known = Object.entries(kept).filter(
      ([key, value]) =>
        key in FIRST_SETTINGS && typeof value === typeof FIRST_SETTINGS[key as keyof Settings],
    );
    return { ...FIRST_SETTINGS, ...Object.fromEntries(known) };
  } catch {
    return FIRST_SETTINGS;
  }
}

/** A browser that keeps nothing (private window, full disk) still works, with first settings next time. */
export function saveSettings(settings: Settings): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(settings));
  } catch (error) {
    console.warn('The settings could not be kept:', error);
  }
}
