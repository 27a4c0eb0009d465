import { table } from "./table.ts";

/** How thick a single cable is over its insulation. */
interface SingleDiameter {
  /** mm². */
  readonly csa: number;
  readonly wire: "solid" | "stranded";
  /** mm. */
  readonly overall: number;
}

export const singleDiameters = table<SingleDiameter>({
  id: "single-diameters",
  title: "Overall diameter of single-core cables without a sheath",
  ref: "BS EN 50525-2-31, upper limits of the mean overall diameter",
  edition: "product standard",
  applies: "Drawings of what lies in a conduit or trunking. Whether it fits is judged by the guide's factors alone.",
  units: { csa: "mm²", wire: "", overall: "mm" },
  standing: "quoted",
  rows: () => [
    { csa: 1, wire: "solid", overall: 2.7 },
    { csa: 1.5, wire: "solid", overall: 3.2 },
    { csa: 2.5, wire: "solid", overall: 3.9 },
    { csa: 1.5, wire: "stranded", overall: 3.3 },
    { csa: 2.5, wire: "stranded", overall: 4 },
    { csa: 4, wire: "stranded", overall: 4.6 },
    { csa: 6, wire: "stranded", overall: 5.2 },
    { csa: 10, wire: "stranded", overall: 6.7 },
    { csa: 16, wire: "stranded", overall: 7.8 },
    { csa: 25, wire: "stranded", overall: 9.7 },
    { csa: 35, wire: "stranded", overall: 10.9 },
    { csa: 50, wire: "stranded", overall: 12.8 },
  ],
  notes: ["1 mm² is insulated for 300/500 V, and so is thinner than the others are for 450/750 V."],
  // Quoted on these pages:
  // - Cable maker's page: single-core 450/750 V, solid, stranded and flexible, 1.5 to 1000 mm²
  // - Cable maker's page: single-core 300/500 V, 0.5 to 1 mm²
  quotedOn: 2,
});

/** The wall of an enclosure, whose size is stated over all. */
interface EnclosureWall {
  readonly kind: "conduit" | "trunking";
  /** mm. */
  readonly wall: number;
}

export const enclosureWalls = table<EnclosureWall>({
  id: "enclosure-walls",
  title: "Wall of heavy steel conduit and of steel trunking",
  ref: "BS EN 61386-21 and BS EN 50085-2-1, usual walls",
  edition: "product standard",
  applies: "Drawings of a cross-section. Other makes differ: the maker states the bore.",
  units: { kind: "", wall: "mm" },
  standing: "memory",
  rows: () => [
    { kind: "conduit", wall: 1.6 },
    { kind: "trunking", wall: 1.2 },
  ],
});
