import { table } from "./table.ts";

/** What third harmonics do to a circuit of three lines and neutral. */
interface HarmonicNeutral {
  /** Above this share of the line current, %. */
  readonly over: number;
  /** Up to and with this share, %. */
  readonly upTo: number;
  /** Reduction of the capacity of the cable. */
  readonly factor: number;
  /** Which current decides the size. */
  readonly by: "line" | "neutral";
}

export const harmonicNeutrals = table<HarmonicNeutral>({
  id: "harmonic-neutrals",
  title: "Third-harmonic currents in four- and five-core cables",
  ref: "BS 7671:2018+A2:2022, Appendix 4, section 5.5, Table 4Aa",
  edition: "18th Edition",
  applies: "Balanced three-phase circuits with cores of one size; the neutral carries three times the harmonic share.",
  units: { over: "%", upTo: "%", factor: "", by: "" },
  standing: "quoted",
  rows: () => [
    { over: 0, upTo: 15, factor: 1, by: "line" },
    { over: 15, upTo: 33, factor: 0.86, by: "line" },
    { over: 33, upTo: 45, factor: 0.86, by: "neutral" },
    { over: 45, upTo: 1000, factor: 1, by: "neutral" },
  ],
  notes: ["The method, a neutral of three times the harmonic share, is arithmetic."],
  // Quoted on these pages:
  // - Cable rating reduction factor due to harmonic current (Table 4Aa to A1:2011)
  quotedOn: 1,
});

/** How much larger a device upstream must be for the one behind it to open alone. */
interface SelectivityRatio {
  readonly key: string;
  readonly item: string;
  readonly value: number;
}

export const selectivityRatios = table<SelectivityRatio>({
  id: "selectivity",
  title: "Ratios for selectivity",
  ref: "BS EN 60269-1, class gG",
  edition: "product standard",
  applies: "Fuses of class gG in series, to BS 88-2 and BS 88-3; ratings are rounded figures of a series.",
  units: { key: "", item: "", value: "" },
  standing: "quoted",
  rows: () => [{ key: "fuse-fuse", item: "gG fuse over gG fuse, ratio of the ratings", value: 1.6 }],
  // Quoted on these pages:
  // - Fuse maker's application guidance: ratio of the ratings
  // - Institution's forum on 433.1.201: fuses to BS 88-3 are of class gG
  quotedOn: 2,
});
