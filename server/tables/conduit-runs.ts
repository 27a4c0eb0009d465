import { computed, quoted, table } from "./table.ts";

/** Conduit factor by length of run and number of bends. */
interface ConduitRun {
  /** Run, m. */
  readonly length: number;
  /** Number of bends. */
  readonly bends: number;
  /** 16 mm conduit. */
  readonly d16: number;
  /** 20 mm. */
  readonly d20: number;
  /** 25 mm. */
  readonly d25: number;
  /** 32 mm. */
  readonly d32: number;
}

export const conduitRuns = table<ConduitRun>({
  id: "con-runs",
  title: "Conduit factors by length of run and number of bends",
  ref: "IET On-Site Guide, Table E4",
  edition: "18th Edition OSG (same figures since the 16th)",
  applies:
    "Straight runs over 3 m and all runs with bends: the sum of cable factors must not exceed the conduit factor.",
  units: { length: "m", bends: "", d16: "", d20: "", d25: "", d32: "" },
  standing: "quoted",
  rows: () => [
    { length: 3.5, bends: 0, d16: 179, d20: 290, d25: 521, d32: 911 },
    { length: 4, bends: 0, d16: 177, d20: 286, d25: 514, d32: 900 },
    { length: 4.5, bends: 0, d16: 174, d20: 282, d25: 507, d32: 889 },
    { length: 5, bends: 0, d16: 171, d20: 278, d25: 500, d32: 878 },
    { length: 6, bends: 0, d16: 167, d20: 270, d25: 487, d32: 857 },
    { length: 7, bends: 0, d16: 162, d20: 263, d25: 475, d32: 837 },
    { length: 8, bends: 0, d16: 158, d20: 256, d25: 463, d32: 818 },
    { length: 9, bends: 0, d16: 154, d20: 250, d25: 452, d32: 800 },
    { length: 10, bends: 0, d16: 150, d20: 244, d25: 442, d32: 783 },
    { length: 1, bends: 1, d16: 188, d20: 303, d25: 543, d32: 947 },
    { length: 1.5, bends: 1, d16: 182, d20: 294, d25: 528, d32: 923 },
    { length: 2, bends: 1, d16: 177, d20: 286, d25: 514, d32: 900 },
    { length: 2.5, bends: 1, d16: 171, d20: 278, d25: 500, d32: 878 },
    { length: 3, bends: 1, d16: 167, d20: 270, d25: 487, d32: 857 },
    { length: 3.5, bends: 1, d16: 162, d20: 263, d25: 475, d32: 837 },
    { length: 4, bends: 1, d16: 158, d20: 256, d25: 463, d32: 818 },
    { length: 4.5, bends: 1, d16: 154, d20: 250, d25: 452, d32: 800 },
    { length: 5, bends: 1, d16: 150, d20: 244, d25: 442, d32: 783 },
    { length: 6, bends: 1, d16: 143, d20: 233, d25: 422, d32: 750 },
    { length: 7, bends: 1, d16: 136, d20: 222, d25: 404, d32: 720 },
    { length: 8, bends: 1, d16: 130, d20: 213, d25: 388, d32: 692 },
    { length: 9, bends: 1, d16: 125, d20: 204, d25: 373, d32: 667 },
    quoted({ length: 10, bends: 1, d16: 120, d20: 196, d25: 358, d32: 643 }, { d25: "computed" }),
    { length: 1, bends: 2, d16: 177, d20: 286, d25: 514, d32: 900 },
    quoted({ length: 1.5, bends: 2, d16: 167, d20: 270, d25: 487, d32: 857 }, { d32: "computed" }),
    quoted({ length: 2, bends: 2, d16: 158, d20: 256, d25: 463, d32: 818 }, { d32: "computed" }),
    quoted({ length: 2.5, bends: 2, d16: 150, d20: 244, d25: 442, d32: 783 }, { d32: "computed" }),
    quoted({ length: 3, bends: 2, d16: 143, d20: 233, d25: 422, d32: 750 }, { d32: "computed" }),
    quoted({ length: 3.5, bends: 2, d16: 136, d20: 222, d25: 404, d32: 720 }, { d32: "computed" }),
    quoted({ length: 4, bends: 2, d16: 130, d20: 213, d25: 388, d32: 692 }, { d32: "computed" }),
    quoted({ length: 4.5, bends: 2, d16: 125, d20: 204, d25: 373, d32: 667 }, { d32: "computed" }),
    quoted({ length: 5, bends: 2, d16: 120, d20: 196, d25: 358, d32: 643 }, { d32: "computed" }),
    quoted({ length: 6, bends: 2, d16: 111, d20: 182, d25: 333, d32: 600 }, { d32: "memory" }),
    quoted({ length: 7, bends: 2, d16: 103, d20: 169, d25: 311, d32: 563 }, { d32: "memory" }),
    quoted({ length: 8, bends: 2, d16: 97, d20: 159, d25: 292, d32: 529 }, { d32: "memory" }),
    quoted({ length: 9, bends: 2, d16: 91, d20: 149, d25: 275, d32: 500 }, { d32: "memory" }),
    quoted({ length: 10, bends: 2, d16: 86, d20: 141, d25: 260, d32: 474 }, { d32: "memory", d25: "computed" }),
    { length: 1, bends: 3, d16: 158, d20: 256, d25: 463, d32: 818 },
    computed({ length: 1.5, bends: 3, d16: 143, d20: 233, d25: 422, d32: 750 }),
    computed({ length: 2, bends: 3, d16: 130, d20: 213, d25: 388, d32: 692 }),
    computed({ length: 2.5, bends: 3, d16: 120, d20: 196, d25: 358, d32: 643 }),
    computed({ length: 3, bends: 3, d16: 111, d20: 182, d25: 333, d32: 600 }, { d32: "memory" }),
    computed({ length: 3.5, bends: 3, d16: 103, d20: 169, d25: 311, d32: 563 }, { d32: "memory" }),
    computed({ length: 4, bends: 3, d16: 97, d20: 159, d25: 292, d32: 529 }, { d32: "memory" }),
    computed({ length: 4.5, bends: 3, d16: 91, d20: 149, d25: 275, d32: 500 }, { d32: "memory" }),
    computed(
      { length: 5, bends: 3, d16: 86, d20: 141, d25: 260, d32: 474 },
      { d32: "memory", d20: "quoted", d25: "quoted" },
    ),
    { length: 1, bends: 4, d16: 130, d20: 213, d25: 388, d32: 692 },
    computed({ length: 1.5, bends: 4, d16: 111, d20: 182, d25: 333, d32: 600 }, { d32: "memory" }),
    computed({ length: 2, bends: 4, d16: 97, d20: 159, d25: 292, d32: 529 }, { d32: "memory" }),
    computed({ length: 2.5, bends: 4, d16: 86, d20: 141, d25: 260, d32: 474 }, { d32: "memory" }),
  ],
  notes: ["n bends at length L equal n − 1 bends at 2 L: entries hidden in the copies were filled from that pattern."],
  // Quoted on these pages:
  // - Wholesaler catalogue 2024-25 p.489: conduit factors
  // - R&M Electrical technical resource: conduit and trunking capacity
  // - Conduit factors with bends, worked example
  quotedOn: 3,
});
