import { parseAttempt } from '../attempt/parse.ts';
import { parseDraft } from '../records/draft.ts';
import { parseSigned } from '../records/evidenceFile.ts';
import { tooLarge } from '../scenario/jsonText.ts';
import { parseScenario } from '../scenario/parse.ts';
import type { PartLibrary } from '../scenario/scenario.ts';
import type { Safe } from '../screens/shared/keepSafe.ts';
import { MOST_EVERYTHING } from '../store/everything.ts';
import type { Readers, Store, TakenIn } from '../store/store.ts';
import { type Room, room } from '../store/windows.ts';
import { guarded, now, right } from './assessor/answers.ts';

/** Everything of this browser into one file and back, for both desks. */
export function createSafe(store: Store, parts: PartLibrary): Safe {
  const readers: Readers = {
    attempt: (input) => parseAttempt(input, parts),
    job: (input) => parseScenario(input, parts),
    record: parseSigned,
    draft: parseDraft,
  };
  return {
    saveAll: () =>
      guarded(async () => {
        const at = now();
        const text = await store.everything(at);
        return right({ name: `slot-and-riser-${at.slice(0, 10)}.json`, text });
      }),
    takeIn: (file) =>
      guarded(async () => {
        const large = tooLarge(file.size, 'a file of everything kept', MOST_EVERYTHING);
        if (large !== null) return { ok: false, issues: [large] };
        const taken = await store.takeIn(await file.text(), readers);
        if (!taken.ok) return taken;
        return right({ said: takenWords(taken.value), leftOut: taken.value.leftOut });
      }),
    room: async () => roomWords(await room()),
  };
}

const things = (count: number) => (count === 1 ? '1 thing' : `${count} things`);

function takenWords({ added, already, leftOut }: TakenIn): string {
  const said = [`${things(added)} added`];
  if (already > 0) said.push(`${things(already)} here already and the same`);
  if (leftOut.length > 0) said.push('some left out, as told below');
  return `${said.join(', ')}.`;
}

/** Megabytes, or gigabytes where there are a thousand of them. */
function bytesWords(bytes: number): string {
  const megabytes = Math.max(1, Math.round(bytes / 1e6));
  return megabytes < 1000 ? `${megabytes} MB` : `${Math.round(megabytes / 1000)} GB`;
}

function roomWords(found: Room | null): string | null {
  if (found === null) return null;
  const promise = found.lasting
    ? 'The browser has promised not to clear it by itself.'
    : 'The browser may clear it when its disk runs full.';
  return `About ${bytesWords(found.usedBytes)} of ${bytesWords(found.mostBytes)} is in use. ${promise}`;
}
