/** What a construction of cable means for the checks, a row each: one that is added to the language lacks its row here. */
import type { Construction } from "../calc/index.ts";
import type { FactOf } from "../model/values.ts";

/** As the vocabulary has them. */
export type CableConstruction = NonNullable<FactOf<"way", "cable">["args"]["construction"]>["value"];

interface Make {
  /** In a column of a paper. */
  readonly paper: string;
  /** At the head of a sentence. */
  readonly named: string;
  /** Whether it may lie direct in the ground. */
  readonly forGround: boolean;
  /** Whether earthed metal goes round its conductors. */
  readonly inMetal: boolean;
  /** Whether capacity, drop and resistance follow from its size by the tables all such cables share. */
  readonly tabled: boolean;
}

const tabled = { forGround: false, inMetal: false, tabled: true } as const;

export const makes = {
  singles: { ...tabled, paper: "singles", named: "A cable without a sheath" },
  "flat-twin": { ...tabled, paper: "flat twin", named: "Flat twin cable" },
  multicore: { ...tabled, paper: "multicore", named: "Multicore cable without armour" },
  armoured: { ...tabled, paper: "armoured", named: "Armoured cable", forGround: true, inMetal: true },
  mineral: { paper: "mineral", named: "Mineral cable", forGround: true, inMetal: true, tabled: false },
  flex: { paper: "flex", named: "A flexible cord", forGround: false, inMetal: false, tabled: false },
  "busbar-trunking": {
    paper: "busbar trunking",
    named: "Busbar trunking",
    forGround: false,
    inMetal: true,
    tabled: false,
  },
} as const satisfies Record<CableConstruction, Make>;

/** Those with `tabled`, as the calculations name them. */
export const isTabledKind = (kind: CableConstruction): kind is Construction => makes[kind].tabled;
