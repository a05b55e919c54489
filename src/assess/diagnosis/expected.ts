import type { Condition, Disposition } from '../../bench/paper.ts';
import type { ArmatureFault, ArmatureFaultKind } from '../../engine/parts/armatureFault.ts';

/** Answers accepted, with the share of the mark each is worth; an answer not named is worth nothing. */
export type Credit<T extends string> = Readonly<Partial<Record<T, number>>>;

/** What a learner may rightly call a fault and do about it. Dispositions are those of the trade, common practice. */
export interface Expected {
  readonly conditions: Credit<Condition>;
  readonly dispositions: Credit<Disposition>;
  /** The heavier remedy decides where a part has more than one fault. */
  readonly weight: number;
}

/** A new armature cures everything, but is more than these faults need. */
const WINDER: Credit<Disposition> = { winder: 1, replace: 0.5 };
const RESOLDER: Credit<Disposition> = { resolder: 1, winder: 0.5 };

/**
 * A coil end off its bar is an open coil to every instrument of the bench; only the lens can tell, and not always.
 * @param seen whether the lens shows the bad joint
 */
function jointExpected(form: 'bar' | 'oneEnd' | 'bothEnds', seen: boolean): Expected {
  if (form !== 'oneEnd')
    return { conditions: { badRiserJoint: 1, openCoil: 0.5 }, dispositions: RESOLDER, weight: 2 };
  const dispositions = seen ? RESOLDER : { resolder: 1, winder: 1, replace: 0.5 };
  return { conditions: { badRiserJoint: 1, openCoil: seen ? 0.5 : 1 }, dispositions, weight: 2 };
}

/** An open coil beside thrown solder cannot be told from a coil end off its riser, and resoldering is worth the try. */
function openExpected(seen: boolean): Expected {
  const alike = seen ? 1 : 0.5;
  return {
    conditions: { openCoil: 1, badRiserJoint: alike },
    dispositions: { ...WINDER, resolder: alike },
    weight: 3,
  };
}

/** A short inside a coil reads like a bridge of its bars until the bars have been cleaned: cleaning first is right. */
const SHORTED: Expected = {
  conditions: { shortedCoil: 1, bridgedBars: 1 },
  dispositions: { cleanAndRetest: 1, winder: 1, replace: 0.5 },
  weight: 1,
};

/** Until the bars are cleaned, only the lens can tell a bridge from a short inside the coil. */
function bridgeExpected(seen: boolean): Expected {
  return {
    conditions: { bridgedBars: 1, shortedCoil: seen ? 0.5 : 1 },
    dispositions: { cleanAndRetest: 1 },
    weight: 1,
  };
}

const EXPECTED: {
  readonly [K in Exclude<ArmatureFaultKind, 'riserJoint' | 'bridgedBars' | 'openCoil'>]: Expected;
} = {
  turnShort: SHORTED,
  coilShort: SHORTED,
  groundedBar: { conditions: { grounded: 1, poorInsulation: 0.5 }, dispositions: WINDER, weight: 3 },
  groundedCoil: { conditions: { grounded: 1, poorInsulation: 0.5 }, dispositions: WINDER, weight: 3 },
  reversedCoil: { conditions: { reversed: 1, shortedCoil: 0.5 }, dispositions: WINDER, weight: 3 },
  weakInsulation: {
    conditions: { poorInsulation: 1, grounded: 1 },
    dispositions: { ...WINDER, cleanAndRetest: 0.5 },
    weight: 3,
  },
  dirtyCommutator: {
    conditions: { bridgedBars: 1, worn: 0.5 },
    dispositions: { cleanAndRetest: 1 },
    weight: 1,
  },
};

export const SOUND: Expected = { conditions: { sound: 1 }, dispositions: { service: 1 }, weight: 0 };

/** @param seen whether the job allows looking and the lens shows the fault's sign at its place */
export function expectedOf(fault: ArmatureFault, seen: boolean): Expected {
  if (fault.kind === 'riserJoint') return jointExpected(fault.form, seen);
  if (fault.kind === 'openCoil') return openExpected(seen);
  return fault.kind === 'bridgedBars' ? bridgeExpected(seen) : EXPECTED[fault.kind];
}
