import type { Condition, Disposition } from '../../bench/paper.ts';
import type { ArmatureFault, ArmatureFaultKind } from '../../engine/parts/armatureFault.ts';
import { type BrushPlateFault, isInsulated } from '../../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../engine/parts/fieldFrame.ts';

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

/** A coil that cannot be mended here: new or reconditioned ones, normally a specialist's job. */
const NEW_COILS: Credit<Disposition> = { winder: 1, replace: 1 };

/**
 * What a fault of a field frame may be called.
 * @param alike whether a bad joint and a bad coil cannot be told apart by the tests of the job
 */
export function fieldExpected(fault: FieldFrameFault, alike: boolean): Expected {
  const other = alike ? 1 : 0.5;
  switch (fault.kind) {
    case 'openCoil':
      return {
        conditions: { openCoil: 1, brokenJoint: other },
        dispositions: { ...NEW_COILS, resolder: other },
        weight: 3,
      };
    case 'brushJoint':
      return {
        conditions: { brokenJoint: 1, [fault.ohm === 'open' ? 'openCoil' : 'shortedCoil']: other },
        dispositions: { resolder: 1, winder: other, replace: other },
        weight: 2,
      };
    case 'shortedTurns':
      return {
        conditions: { shortedCoil: 1, brokenJoint: other },
        dispositions: alike ? { ...NEW_COILS, resolder: 1 } : NEW_COILS,
        weight: 3,
      };
    case 'groundedCoil':
      return { conditions: { grounded: 1, poorInsulation: 0.5 }, dispositions: NEW_COILS, weight: 3 };
    case 'weakInsulation':
      return {
        conditions: { poorInsulation: 1, grounded: 1 },
        dispositions: { ...NEW_COILS, cleanAndRetest: 0.5 },
        weight: 3,
      };
  }
}

/** What eyes, and work already done, add to what the lamp says of a brush plate. */
export interface PlateSeen {
  /** The lens shows dirt, or a darkened insulator, at the holder. */
  readonly dirt: boolean;
  readonly darkened: boolean;
  /** The insulation has been cleaned since. */
  readonly cleaned: boolean;
}

/** @param lampTells the lamp shows it, and not the insulation tester alone */
export function plateExpected(fault: BrushPlateFault, lampTells: boolean, seen: PlateSeen): Expected {
  switch (fault.kind) {
    case 'dirt':
      return dirtExpected(lampTells, seen);
    case 'insulatorDown':
      return insulatorExpected(seen);
    case 'looseRivet':
      return rivetExpected(isInsulated(fault.holder));
    case 'brokenPigtail':
      // A dark lamp says broken pigtail or holder joint; either is a new brush or solder.
      return {
        conditions: { brokenJoint: 1, looseRivet: 0.5 },
        dispositions: { resolder: 1, replace: 1 },
        weight: 2,
      };
  }
}

/** Until the insulation has been cleaned, a lamp that lights through dirt looks like an insulator that is down. */
function dirtExpected(lampTells: boolean, { dirt }: PlateSeen): Expected {
  const unseen = dirt ? 0.5 : 1;
  const conditions: Credit<Condition> = lampTells
    ? { bridgedBars: 1, grounded: unseen, poorInsulation: unseen }
    : { bridgedBars: 1, poorInsulation: 1, grounded: 0.5 };
  return { conditions, dispositions: { cleanAndRetest: 1 }, weight: 1 };
}

/** Cleaning first is right; what is left after it is the insulator. Dark under dirt, it cannot be told until then. */
function insulatorExpected({ dirt, darkened, cleaned }: PlateSeen): Expected {
  const dirty = (darkened && !dirt) || cleaned ? 0.5 : 1;
  const dispositions: Credit<Disposition> = cleaned
    ? { replace: 1, winder: 0.5 }
    : { replace: 1, cleanAndRetest: 1, winder: 0.5 };
  return { conditions: { grounded: 1, poorInsulation: 1, bridgedBars: dirty }, dispositions, weight: 3 };
}

function rivetExpected(insulated: boolean): Expected {
  const half: Credit<Condition> = insulated ? { grounded: 0.5, poorInsulation: 0.5 } : { brokenJoint: 0.5 };
  const dispositions: Credit<Disposition> = insulated
    ? { cleanAndRetest: 1, replace: 0.5 }
    : { cleanAndRetest: 1, replace: 0.5, resolder: 0.5 };
  return { conditions: { looseRivet: 1, ...half }, dispositions, weight: 1 };
}
