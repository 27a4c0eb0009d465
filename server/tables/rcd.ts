import { memory, quoted, table } from "./table.ts";

/** Greatest and least break times by multiple of IΔn. */
export interface RcdTimes {
  /** Short name for look-up. */
  readonly key: "general" | "delayed" | "legacy";
  /** General or S. */
  readonly type: string;
  /** At IΔn, ms. */
  readonly times1: number;
  /** At 2 IΔn, ms. */
  readonly times2: number | null;
  /** At 5 IΔn, ms. */
  readonly times5: number;
  /** Minimum non-actuating at IΔn, ms. */
  readonly least1: number | null;
  /** Minimum at 2 IΔn, ms. */
  readonly least2: number | null;
  /** Minimum at 5 IΔn, ms. */
  readonly least5: number | null;
}

export const rcdTimes = table<RcdTimes>({
  id: "rcd-times",
  title: "RCD maximum break times (product standard)",
  ref: "BS EN 61008-1 and BS EN 61009-1, break times",
  edition: "Product standard; BS 4293 and BS 7288 kept for legacy",
  applies: "Residual current applied suddenly, type AC/A tested with a.c.",
  units: { key: "", type: "", times1: "ms", times2: "ms", times5: "ms", least1: "ms", least2: "ms", least5: "ms" },
  standing: "quoted",
  rows: () => [
    {
      key: "general",
      type: "General (non-delayed)",
      times1: 300,
      times2: 150,
      times5: 40,
      least1: null,
      least2: null,
      least5: null,
    },
    quoted(
      {
        key: "delayed",
        type: "S (time delay)",
        times1: 500,
        times2: 200,
        times5: 150,
        least1: 130,
        least2: 60,
        least5: 50,
      },
      { least2: "memory" },
    ),
    {
      key: "legacy",
      type: "BS 4293 / BS 7288 (legacy, non-delay)",
      times1: 200,
      times2: null,
      times5: 40,
      least1: null,
      least2: null,
      least5: null,
    },
  ],
  notes: [
    "Type S is for IΔn above 30 mA and not for additional protection.",
    "At half the rated current it must not trip within 1000 ms (2000 ms on some instruments).",
    "A type A device may need 1.4 IΔn of pulsating d.c., and 2 IΔn at 10 mA and below.",
    "Legacy non-delayed devices have 200 ms: use the standard marked on the device.",
  ],
  // Quoted on these pages:
  // - Trade article: Table 1 tripping times for RCDs at 1, 2 and 5 times rated residual current
  // - RCBO maker data: trip tests and RCD break times
  // - Multifunction tester manual: RCD trip-time table
  // - Tester manual: RCD auto test limits
  // - RCD tester manual: trip-time table incl. type S minimums
  quotedOn: 5,
});

/** Where on a rising current the device may trip. */
interface RcdBand {
  /** Short name for look-up. */
  readonly key: string;
  /** RCD type. */
  readonly type: string;
  /** Must not trip below, % IΔn. */
  readonly low: number;
  /** Must trip by, % IΔn. */
  readonly high: number | null;
}

export const rcdBands = table<RcdBand>({
  id: "rcd-bands",
  title: "RCD trip-current bands",
  ref: "BS EN 61008-1, trip current limits",
  edition: "product standard",
  applies: "Ramp test.",
  units: { key: "", type: "", low: "% IΔn", high: "% IΔn" },
  standing: "quoted",
  rows: () => [
    { key: "AC", type: "AC", low: 50, high: 100 },
    { key: "A-over-10mA", type: "A, IΔn > 10 mA", low: 35, high: 140 },
    { key: "A-to-10mA", type: "A, IΔn ≤ 10 mA", low: 35, high: 200 },
    memory({ key: "B-smooth", type: "B, smooth d.c.", low: 50, high: 200 }),
    quoted({ key: "no-trip", type: "Practical no-trip test", low: 50, high: null }, {}, "0.5 IΔn must not trip"),
  ],
  // Quoted on these pages:
  // - Installation tester manual: RCD limits and trip-current bands
  // - Manufacturer FAQ: 0.5 to 1.0 IDn tripping band
  // - Tester manual: RCD auto test limits
  quotedOn: 3,
});

/** A rule of the RCD test since 2022. */
interface RcdTestRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  readonly value: number | string;
  readonly unit: string;
}

export const rcdTestRules = table<RcdTestRule>({
  id: "rcd-a2-test",
  title: "RCD testing rules after A2:2022",
  ref: "BS 7671:2018+A2:2022, 643.7.1 and 643.8",
  edition: "A2:2022 (28 March 2022 / 27 September 2022)",
  applies: "Initial and periodic verification.",
  units: { key: "", rule: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "test-current",
      rule: "Effectiveness verified by an a.c. test at rated residual current for any type",
      value: "IΔn",
      unit: "",
    },
    quoted(
      { key: "general", rule: "Limit for a general (non-delay) RCD at that test", value: 300, unit: "ms" },
      {},
      "The limit is the product standard's at IΔn; the note of BS 7671 that repeats it was not itself seen.",
    ),
    quoted(
      { key: "delayed", rule: "Limit for a time-delay (S) RCD at that test", value: 500, unit: "ms" },
      {},
      "As for the general type; it must also not trip before 130 ms.",
    ),
    {
      key: "button-first",
      rule: "Test button press before instrument testing (GN3 9th edition advice)",
      value: "yes",
      unit: "",
    },
  ],
  notes: [
    "Before Amendment 2 a test at 5 IΔn (40 ms) was needed for additional protection; one a.c. test at IΔn now suffices for any type.",
    "Tests at half and five times the rated current are still made to find faults.",
  ],
  // Quoted on these pages:
  // - IET EngX: RCD testing in A2:2022 (643.7.1, 643.8)
  // - Trade article: Table 1 tripping times for RCDs at 1, 2 and 5 times rated residual current
  // - Multifunction tester manual: RCD trip-time table
  quotedOn: 3,
});
