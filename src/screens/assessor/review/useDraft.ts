import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Draft } from '../../../records/draft.ts';
import type { Issue } from '../../../scenario/scenario.ts';
import type { AssessorDesk } from '../desk.ts';

export type Saving = 'saved' | 'saving' | 'refused';

export interface Drafting {
  readonly draft: Draft;
  readonly saving: Saving;
  readonly issues: readonly Issue[];
  change(part: Partial<Draft>): void;
  /** Resolves once everything changed so far is kept; false when something was refused. */
  settled(): Promise<boolean>;
}

/** How long typing may pause before what was typed is kept, ms. */
const KEEP_AFTER_MS = 500;

/** Keeps a draft as it is worked on: one save at a time, the newest state, never over someone else's change. */
export class DraftKeeper {
  draft: Draft;
  saving: Saving = 'saved';
  issues: readonly Issue[] = [];
  private readonly save: AssessorDesk['save'];
  private readonly told: () => void;
  private revision: number;
  private kept: Draft;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private work: Promise<void> = Promise.resolve();

  constructor(draft: Draft, revision: number, save: AssessorDesk['save'], told: () => void) {
    this.draft = draft;
    this.kept = draft;
    this.revision = revision;
    this.save = save;
    this.told = told;
  }

  change(part: Partial<Draft>): void {
    this.draft = { ...this.draft, ...part };
    this.saving = 'saving';
    this.told();
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.keep(), KEEP_AFTER_MS);
  }

  async settled(): Promise<boolean> {
    await this.keep();
    return this.saving === 'saved';
  }

  private keep(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    this.work = this.work.then(() => this.keepNow());
    return this.work;
  }

  private async keepNow(): Promise<void> {
    const wanted = this.draft;
    if (wanted === this.kept) return;
    const answer = await this.save(wanted, this.revision);
    if (answer.ok) {
      this.revision = answer.value;
      this.kept = wanted;
    }
    this.issues = answer.ok ? [] : answer.issues;
    this.saving = answer.ok ? (this.draft === wanted ? 'saved' : 'saving') : 'refused';
    this.told();
  }
}

export function useDraft(
  start: { readonly draft: Draft; readonly revision: number },
  desk: AssessorDesk,
): Drafting {
  const [, renew] = useState(0);
  const keeper = useMemo(
    () => new DraftKeeper(start.draft, start.revision, desk.save, () => renew((count) => count + 1)),
    [start, desk],
  );
  useEffect(() => {
    const keep = () => void keeper.settled();
    addEventListener('pagehide', keep);
    return () => {
      removeEventListener('pagehide', keep);
      keep();
    };
  }, [keeper]);
  return {
    draft: keeper.draft,
    saving: keeper.saving,
    issues: keeper.issues,
    change: (part) => keeper.change(part),
    settled: () => keeper.settled(),
  };
}
