import { openBrowserStore } from '../../../src/store/browserStore.ts';
import { holdAttempt, room } from '../../../src/store/windows.ts';
import { attempt, entry, head } from '../../store/support.ts';

/** The store alone in a page, for tests that kill the browser or fill its disk. */
const handles = { openBrowserStore, holdAttempt, room, attempt, entry, head };
export type StorePage = typeof handles;
Object.assign(globalThis, { storePage: handles });
