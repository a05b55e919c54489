/**
 * An armature as data. All lengths m, areas m^2. Slot s has its middle at rotation + 2*pi*s/slots from the bottom;
 * coil i has its first side in the top layer of slot floor(i/coilsPerSlot), its second in the bottom layer
 * `spanSlots` further on, and runs from bar i to bar i + commutatorPitch (mod bars).
 */
export interface ArmatureDesign {
  readonly id: string;
  readonly name: string;
  readonly winding: 'lap' | 'wave';
  readonly poles: number;
  readonly slots: number;
  /** Coil sides in one layer of one slot. */
  readonly coilsPerSlot: number;
  readonly bars: number;
  readonly turns: number;
  /** Bars from the start of a coil to its end, +1/-1 for lap, (bars+-1)/(poles/2) for simplex wave. */
  readonly commutatorPitch: number;
  readonly spanSlots: number;
  /** Equipotential connections one pole pair apart (lap only). */
  readonly equalised: boolean;
  /**
   * Forced wave winding: the place, 0..slots*coilsPerSlot-1, of the coil that fills the slots for balance with its
   * ends cut off and insulated. Then slots*coilsPerSlot = bars + 1. Left out on every other winding.
   */
  readonly dummyPlace?: number | undefined;
  readonly outerRadius: number;
  readonly shaftRadius: number;
  readonly stackLength: number;
  /** Gap between core and jaw face at the contact line. */
  readonly jawGap: number;
  /** Slot mouth width b0, lip height h0, wedge height h1, slot width bs, height of one conductor layer hl. */
  readonly slotMouth: number;
  readonly lipHeight: number;
  readonly wedgeHeight: number;
  readonly slotWidth: number;
  readonly layerHeight: number;
  readonly relativePermeability: number;
  readonly conductorArea: number;
  readonly commutatorRadius: number;
}
