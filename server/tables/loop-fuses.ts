import { computed, memory, quoted, table } from "./table.ts";

/** Greatest Zs of a fuse for 0.4 s. */
interface FuseLoop04 {
  /** Standard and system. */
  readonly standard: "BS 88-2" | "BS 88-3" | "BS 3036" | "BS 1362";
  /** Rated current, A. */
  readonly rating: number;
  /** Current for 0.4 s (Appendix 3; inferred where marked), A. */
  readonly Ia: number | null;
  /** Maximum Zs, 0.4 s, Cmin 0.95, Ω. */
  readonly zs: number | null;
  /** 80 % cold value, truncated, Ω. */
  readonly strict: number | null;
  /** BS 7671:2008+A1:2011 value (Cmin = 1), Ω. */
  readonly zsCmin1: number | null;
}

export const fuseLoop04 = table<FuseLoop04>({
  id: "zs-41.2",
  title: "Maximum Zs for fuses, 0.4 s, U0 230 V",
  ref: "BS 7671:2018+A2:2022, Table 41.2",
  edition: "18th Edition, Cmin = 0.95; Cmin = 1 column is BS 7671:2008+A1:2011",
  applies: "Final circuits needing 0.4 s (411.3.2.2): up to 63 A with socket-outlets, up to 32 A fixed equipment.",
  refs: { zsCmin1: "BS 7671:2008+A1:2011, Table 41.2" },
  units: { standard: "", rating: "A", Ia: "A", zs: "Ω", strict: "Ω", zsCmin1: "Ω" },
  standing: "memory",
  // The operating current at a time is read off a curve.
  share: 0.2,
  rows: () => [
    { standard: "BS 88-2", rating: 2, Ia: null, zs: 33.1, strict: 26.48, zsCmin1: null },
    { standard: "BS 88-2", rating: 4, Ia: null, zs: 15.6, strict: 12.48, zsCmin1: null },
    computed({ standard: "BS 88-2", rating: 6, Ia: 28, zs: 7.8, strict: 6.24, zsCmin1: 8.21 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 10, Ia: 47, zs: 4.65, strict: 3.71, zsCmin1: 4.89 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 16, Ia: 90, zs: 2.43, strict: 1.94, zsCmin1: 2.56 }, { zsCmin1: "quoted" }),
    computed(
      { standard: "BS 88-2", rating: 20, Ia: 130, zs: 1.68, strict: 1.34, zsCmin1: 1.77 },
      { zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 88-2", rating: 25, Ia: 170, zs: 1.29, strict: 1.02, zsCmin1: 1.35 },
      { zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 88-2", rating: 32, Ia: 220, zs: 0.99, strict: 0.79, zsCmin1: 1.04 },
      { zsCmin1: "quoted" },
    ),
    { standard: "BS 88-2", rating: 40, Ia: 290, zs: 0.75, strict: 0.6, zsCmin1: null },
    { standard: "BS 88-2", rating: 50, Ia: 380, zs: 0.58, strict: 0.46, zsCmin1: null },
    { standard: "BS 88-2", rating: 63, Ia: 500, zs: 0.44, strict: 0.35, zsCmin1: null },
    computed(
      { standard: "BS 88-3", rating: 5, Ia: 22, zs: 9.93, strict: 7.94, zsCmin1: 10.45 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 88-3", rating: 16, Ia: 95, zs: 2.3, strict: 1.84, zsCmin1: 2.42 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 88-3", rating: 20, Ia: 113, zs: 1.93, strict: 1.54, zsCmin1: 2.04 },
      { Ia: "quoted", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 88-3", rating: 32, Ia: 240, zs: 0.91, strict: 0.72, zsCmin1: 0.96 },
      { Ia: "memory", strict: "quoted", zsCmin1: "quoted" },
    ),
    memory(
      { standard: "BS 88-3", rating: 45, Ia: null, zs: null, strict: null, zsCmin1: null },
      {},
      "printed in the 18th Edition, value not recalled; fill from the book",
    ),
    memory(
      { standard: "BS 88-3", rating: 63, Ia: null, zs: null, strict: null, zsCmin1: null },
      {},
      "printed in the 18th Edition, value not recalled; fill from the book",
    ),
    computed(
      { standard: "BS 3036", rating: 5, Ia: 24, zs: 9.1, strict: 7.28, zsCmin1: 9.58 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 3036", rating: 15, Ia: 90, zs: 2.43, strict: 1.94, zsCmin1: 2.55 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 3036", rating: 20, Ia: 130, zs: 1.68, strict: 1.34, zsCmin1: 1.77 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 3036", rating: 30, Ia: 210, zs: 1.04, strict: 0.83, zsCmin1: 1.09 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    memory(
      { standard: "BS 3036", rating: 45, Ia: null, zs: null, strict: null, zsCmin1: null },
      {},
      "printed in the 18th Edition, value not recalled; fill from the book",
    ),
    memory(
      { standard: "BS 3036", rating: 60, Ia: null, zs: null, strict: null, zsCmin1: null },
      {},
      "printed in the 18th Edition, value not recalled; fill from the book",
    ),
    computed(
      { standard: "BS 1362", rating: 3, Ia: 14, zs: 15.6, strict: 12.48, zsCmin1: 16.4 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
    computed(
      { standard: "BS 1362", rating: 13, Ia: 95, zs: 2.3, strict: 1.84, zsCmin1: 2.42 },
      { Ia: "memory", zsCmin1: "quoted" },
    ),
  ],
  notes: [
    "Ia for BS 88-2 is inferred: the whole-ampere current that reproduces the published Cmin = 1 value (230/28 = 8.21).",
    "Where the figure printed for Cmin = 1 was seen, that for 0.95 follows from it by 411.4.4 and is held to it by a test.",
    "The 40, 50 and 63 A rows came with the 63 A rule of the 18th Edition.",
    "BS 88-3 45 and 63 A and BS 3036 45 and 60 A are printed there, but their values are not known here.",
    "Figures quoted without an edition are unreliable: values for Cmin = 1 and for 240 V circulate.",
  ],
  // Quoted on these pages:
  // - NICEIC Connections, Winter 2011-12, p.60: fuse-standard changes and BS 88-2 Zs
  // - NICEIC/ELECSA Connections, Spring 2015, p.61: limiting values of measured Zs
  // - Installation tester instruction manual, p.57: limits of loop impedance to A1:2011, printed as 0.8 of them
  // - Maximum Ze and Zs values (five-page list, 17th Edition as first issued), pp.1-3
  // - Trade article on the fuse standards and the tables of Zs: 20 A to BS 88-3 blows within 0.4 s at 113 A
  quotedOn: 5,
});

/** Greatest Zs of a fuse for 5 s. */
interface FuseLoop5 {
  /** Standard and system. */
  readonly standard: "BS 88-2" | "BS 88-3" | "BS 3036" | "BS 1362";
  /** Rated current, A. */
  readonly rating: number;
  /** Maximum Zs, 5 s, Cmin 0.95, Ω. */
  readonly zs: number;
  /** 80 % cold value, truncated, Ω. */
  readonly strict: number;
  /** As printed in BS 7671:2008+A1:2011 (Cmin = 1), Ω. */
  readonly zsCmin1: number | null;
}

export const fuseLoop5 = table<FuseLoop5>({
  id: "zs-41.4",
  title: "Maximum Zs for fuses, 5 s, U0 230 V",
  ref: "BS 7671:2018+A2:2022, Table 41.4",
  refs: { zsCmin1: "BS 7671:2008+A1:2011, Table 41.4" },
  edition: "18th Edition, Cmin = 0.95; Cmin = 1 column is BS 7671:2008+A1:2011",
  applies: "Distribution circuits and final circuits not covered by 411.3.2.2 (TN, 5 s under 411.3.2.3).",
  units: { standard: "", rating: "A", zs: "Ω", strict: "Ω", zsCmin1: "Ω" },
  standing: "memory",
  // The operating current at a time is read off a curve.
  share: 0.2,
  rows: () => [
    { standard: "BS 88-2", rating: 2, zs: 44, strict: 35.2, zsCmin1: null },
    { standard: "BS 88-2", rating: 4, zs: 21, strict: 16.8, zsCmin1: null },
    computed({ standard: "BS 88-2", rating: 6, zs: 12, strict: 9.6, zsCmin1: 12.8 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 10, zs: 6.8, strict: 5.44, zsCmin1: 7.19 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 16, zs: 4, strict: 3.2, zsCmin1: 4.18 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 20, zs: 2.8, strict: 2.24, zsCmin1: 2.95 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 25, zs: 2.2, strict: 1.76, zsCmin1: 2.3 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 32, zs: 1.7, strict: 1.36, zsCmin1: 1.84 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 40, zs: 1.3, strict: 1.04, zsCmin1: 1.35 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 50, zs: 0.99, strict: 0.79, zsCmin1: 1.04 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 63, zs: 0.78, strict: 0.62, zsCmin1: 0.82 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 80, zs: 0.55, strict: 0.44, zsCmin1: 0.57 }, { zsCmin1: "quoted" }),
    computed(
      { standard: "BS 88-2", rating: 100, zs: 0.44, strict: 0.35, zsCmin1: 0.46 },
      { zsCmin1: "quoted" },
      "0.95 × 0.46 Ω; the 0.42 Ω sometimes quoted is that of the fuse to BS 88-2.2 in 2008.",
    ),
    computed({ standard: "BS 88-2", rating: 125, zs: 0.32, strict: 0.25, zsCmin1: 0.34 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 160, zs: 0.27, strict: 0.21, zsCmin1: 0.28 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-2", rating: 200, zs: 0.18, strict: 0.14, zsCmin1: 0.19 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 5, zs: 14.6, strict: 11.68, zsCmin1: 15.33 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 16, zs: 3.9, strict: 3.12, zsCmin1: 4.11 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 20, zs: 3.2, strict: 2.56, zsCmin1: 3.38 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 32, zs: 1.6, strict: 1.28, zsCmin1: 1.64 }, { zsCmin1: "quoted" }),
    memory({ standard: "BS 88-3", rating: 45, zs: 1, strict: 0.8, zsCmin1: 1.04 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 63, zs: 0.68, strict: 0.54, zsCmin1: 0.72 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 88-3", rating: 80, zs: 0.51, strict: 0.4, zsCmin1: 0.53 }, { zsCmin1: "quoted" }),
    quoted({ standard: "BS 88-3", rating: 100, zs: 0.38, strict: 0.3, zsCmin1: 0.4 }, { strict: "computed" }),
    computed({ standard: "BS 3036", rating: 5, zs: 16.8, strict: 13.44, zsCmin1: 17.7 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 15, zs: 5.08, strict: 4.06, zsCmin1: 5.35 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 20, zs: 3.64, strict: 2.91, zsCmin1: 3.83 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 30, zs: 2.51, strict: 2, zsCmin1: 2.64 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 45, zs: 1.51, strict: 1.2, zsCmin1: 1.59 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 60, zs: 1.07, strict: 0.85, zsCmin1: 1.12 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 3036", rating: 100, zs: 0.5, strict: 0.4, zsCmin1: 0.53 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 1362", rating: 3, zs: 22, strict: 17.6, zsCmin1: 23.2 }, { zsCmin1: "quoted" }),
    computed({ standard: "BS 1362", rating: 13, zs: 3.64, strict: 2.91, zsCmin1: 3.83 }, { zsCmin1: "quoted" }),
  ],
  notes: [
    "The figures for Cmin = 1 were seen printed; those for 0.95 are the table's two or three digits of 0.95 times them, held to that by a test.",
    "BS 88-3 45 A is remembered as 1.0 Ω, where 0.95 × 1.04 Ω is 0.99 Ω. Of 2 and 4 A no printed figure was seen.",
  ],
  // Quoted on these pages:
  // - Installation tester instruction manual, p.57: limits of loop impedance to A1:2011, printed as 0.8 of them
  // - Maximum Ze and Zs values (five-page list, 17th Edition as first issued), pp.1-3
  // - Contractor's blog: maximum Zs of a BS 88-3 100 A main fuse
  quotedOn: 3,
});

/** Greatest Zs of a fuse to BS 88-2.2 or BS 88-6, as the 2008 edition printed it before its first amendment. */
interface FuseLoop2008 {
  /** Rated current, A. */
  readonly rating: number;
  /** 0.4 s, Cmin = 1, Ω. */
  readonly zs04: number | null;
  /** 5 s, Cmin = 1, Ω. */
  readonly zs5: number;
}

export const fuseLoop2008 = table<FuseLoop2008>({
  id: "zs-2008-gg",
  title: "General purpose fuses BS 88-2.2 and BS 88-6: maximum Zs, U0 230 V, before Amendment 1",
  ref: "BS 7671:2008, Table 41.4(a)",
  refs: { zs04: "BS 7671:2008, Table 41.2(a)" },
  edition: "17th Edition as first issued, Cmin = 1",
  applies: "Schedules to BS 7671:2008 before its Amendment 1 of 2011.",
  units: { rating: "A", zs04: "Ω", zs5: "Ω" },
  standing: "quoted",
  rows: () => [
    { rating: 6, zs04: 8.52, zs5: 13.5 },
    { rating: 10, zs04: 5.11, zs5: 7.42 },
    { rating: 16, zs04: 2.7, zs5: 4.18 },
    { rating: 20, zs04: 1.77, zs5: 2.91 },
    { rating: 25, zs04: 1.44, zs5: 2.3 },
    { rating: 32, zs04: 1.04, zs5: 1.84 },
    { rating: 40, zs04: null, zs5: 1.35 },
    { rating: 50, zs04: null, zs5: 1.04 },
    { rating: 63, zs04: null, zs5: 0.82 },
    { rating: 80, zs04: null, zs5: 0.57 },
    { rating: 100, zs04: null, zs5: 0.42 },
    { rating: 125, zs04: null, zs5: 0.33 },
    { rating: 160, zs04: null, zs5: 0.25 },
    { rating: 200, zs04: null, zs5: 0.19 },
  ],
  // Quoted on these pages:
  // - Maximum Ze and Zs values (five-page list, 17th Edition as first issued), pp.1-3
  // - NICEIC Connections, Winter 2011-12, p.60: fuse-standard changes and BS 88-2 Zs
  quotedOn: 2,
});

/** Greatest Zs of a BS 1361 fuse, met in older installations. */
interface Bs1361Loop {
  /** Rated current, A. */
  readonly rating: number;
  /** 0.4 s, Ω. */
  readonly zs04: number | null;
  /** 5 s, Ω. */
  readonly zs5: number;
  /** 0.4 s with Cmin 0.95, Ω. */
  readonly zs04Cmin: number | null;
  /** 5 s with Cmin 0.95, Ω. */
  readonly zs5Cmin: number;
}

export const bs1361Loop = table<Bs1361Loop>({
  id: "zs-1361-legacy",
  title: "Legacy fuses BS 1361 (withdrawn 2010, still met on periodic inspection): maximum Zs, Cmin = 1",
  ref: "BS 7671:2008, Tables 41.2(c) and 41.4(b)",
  edition: "17th Edition as first issued, Cmin = 1",
  applies: "Existing installations only. Multiply by 0.95 to compare with a current-edition limit.",
  units: { rating: "A", zs04: "Ω", zs5: "Ω", zs04Cmin: "Ω", zs5Cmin: "Ω" },
  standing: "quoted",
  refs: { zs04: "BS 7671:2008, Table 41.2(c)", zs5: "BS 7671:2008, Table 41.4(b)" },
  rows: () => [
    quoted(
      { rating: 5, zs04: 10.45, zs5: 16.4, zs04Cmin: 9.92, zs5Cmin: 15.58 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 15, zs04: 3.28, zs5: 5, zs04Cmin: 3.11, zs5Cmin: 4.75 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 20, zs04: 1.7, zs5: 2.8, zs04Cmin: 1.61, zs5Cmin: 2.66 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 30, zs04: 1.15, zs5: 1.84, zs04Cmin: 1.09, zs5Cmin: 1.74 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 45, zs04: null, zs5: 0.96, zs04Cmin: null, zs5Cmin: 0.91 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 60, zs04: null, zs5: 0.7, zs04Cmin: null, zs5Cmin: 0.66 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 80, zs04: null, zs5: 0.5, zs04Cmin: null, zs5Cmin: 0.47 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
    quoted(
      { rating: 100, zs04: null, zs5: 0.36, zs04Cmin: null, zs5Cmin: 0.34 },
      { zs04Cmin: "computed", zs5Cmin: "computed" },
    ),
  ],
  // Quoted on these pages:
  // - Maximum Ze and Zs values (five-page list, 17th Edition as first issued), pp.1-3
  quotedOn: 1,
});
