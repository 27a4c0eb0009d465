import { published, table } from "./table.ts";

/** A test in its place in the sequence. */
export interface TestStep {
  /** Order. */
  readonly place: number;
  readonly test: string;
  /** Dead or live. */
  readonly live: string;
  /** 17th number. */
  readonly reg17: string;
  /** 18th number. */
  readonly reg18: string;
}

export const testOrder = table<TestStep>({
  id: "test-order",
  title: "Sequence of tests for initial verification",
  ref: "BS 7671:2018+A2:2022, 643.2 to 643.11",
  edition: "18th Edition; 612.2 to 612.14 in the 17th Edition",
  applies: "Dead tests completed satisfactorily before energising.",
  units: { place: "", test: "", live: "", reg17: "", reg18: "" },
  standing: "published",
  rows: [
    published(
      {
        place: 1,
        test: "Continuity of protective and bonding conductors",
        live: "dead",
        reg17: "612.2.1",
        reg18: "643.2.1",
      },
      { reg18: "memory" },
    ),
    published(
      {
        place: 2,
        test: "Continuity of ring final circuit conductors",
        live: "dead",
        reg17: "612.2.2",
        reg18: "643.2.1",
      },
      { reg18: "memory" },
    ),
    published(
      { place: 3, test: "Insulation resistance", live: "dead", reg17: "612.3", reg18: "643.3" },
      { reg18: "memory" },
    ),
    published(
      { place: 4, test: "Separation: SELV, PELV, electrical separation", live: "dead", reg17: "612.4", reg18: "643.4" },
      { reg18: "memory" },
    ),
    published(
      {
        place: 5,
        test: "Basic protection by barriers/enclosures; floors and walls",
        live: "dead",
        reg17: "612.4.4, 612.5",
        reg18: "643.5",
      },
      { reg18: "memory" },
    ),
    published({ place: 6, test: "Polarity", live: "dead", reg17: "612.6", reg18: "643.6" }, { reg18: "memory" }),
    published(
      { place: 7, test: "Earth electrode resistance", live: "dead/live", reg17: "612.7", reg18: "643.7.2" },
      { reg18: "memory" },
    ),
    published(
      { place: 8, test: "Earth fault loop impedance (Ze, Zs)", live: "live", reg17: "612.9", reg18: "643.7.3" },
      { reg18: "memory" },
    ),
    published(
      { place: 9, test: "Additional protection (RCD)", live: "live", reg17: "612.10", reg18: "643.8" },
      { reg18: "memory" },
    ),
    published(
      { place: 10, test: "Prospective fault current", live: "live", reg17: "612.11", reg18: "643.7.3.201" },
      { reg18: "memory" },
    ),
    published(
      { place: 11, test: "Phase sequence", live: "live", reg17: "612.12", reg18: "643.9" },
      { reg18: "memory" },
    ),
    published(
      { place: 12, test: "Functional testing", live: "live", reg17: "612.13", reg18: "643.10" },
      { reg18: "memory" },
    ),
    published(
      { place: 13, test: "Voltage drop", live: "calculated/live", reg17: "612.14", reg18: "643.11" },
      { reg18: "memory" },
    ),
  ],
  notes: [
    "612.x numbers are on the page seen; 643.x are from memory.",
    "Inspect and test during erection and on completion (641.1), without danger or damage (641.4).",
    "Dead tests are made with the installation isolated and locked off.",
    "Zs may be found from measured Ze and measured R1+R2, with less live work.",
  ],
  seen: [
    "Training page: sequence of tests (17th Edition clause numbers 612.x)",
    "Home electrics page: order of dead and live tests",
    "Training centre guide: electrical testing sequence",
    "Revision notes: order of dead and live tests",
  ],
});

/** A precaution while testing. */
export interface TestPrecaution {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  /** Number. */
  readonly value: number | string;
  readonly unit: string;
}

export const testPrecautions = table<TestPrecaution>({
  id: "test-precautions",
  title: "Precautions while testing",
  ref: "BS 7671:2018+A2:2022, 641.4, and HSE GS 38",
  edition: "18th Edition",
  applies: "Any test.",
  units: { key: "", rule: "", value: "", unit: "" },
  standing: "published",
  rows: [
    published(
      {
        key: "continuity-instrument",
        rule: "Continuity tester: no-load voltage / short-circuit current",
        value: "4-24 / ≥200",
        unit: "V / mA",
      },
      {},
      "From the instrument standard of the 16th Edition's time.",
    ),
    published(
      {
        key: "continuity-current",
        rule: "Continuity tester: least short-circuit current",
        value: 200,
        unit: "mA",
      },
      {},
      "From the instrument standard of the 16th Edition's time.",
    ),
    {
      key: "insulation-instrument",
      rule: "Insulation tester for 230/400 V: 500 V d.c. with at least 1 mA output",
      value: "500 V, 1 mA",
      unit: "",
    },
    { key: "leads", rule: "Test leads and probes: HSE guidance note GS 38", value: "GS 38", unit: "" },
    { key: "tips", rule: "GS 38: maximum exposed tip", value: 4, unit: "mm (2 mm preferred)" },
    published(
      { key: "fused-leads", rule: "Test fuse in leads (older guidance)", value: 500, unit: "mA" },
      {},
      "GS 38 asks for fused or current-limited leads on some instruments.",
    ),
    {
      key: "isolation",
      rule: "Safe isolation: approved voltage indicator plus proving unit, locking and notices",
      value: "yes",
      unit: "",
    },
    published(
      {
        key: "electronics",
        rule: "Disconnect or bypass electronics and SPDs before a 500 V insulation test",
        value: "yes",
        unit: "",
      },
      {},
      "Some accessories need disconnection even at 250 V.",
    ),
    {
      key: "dead-first",
      rule: "Do dead tests before live tests; do not energise until they pass",
      value: "yes",
      unit: "",
    },
    {
      key: "live-loop",
      rule: "Live loop impedance tests only where needed: Zs may be calculated as measured Ze + measured R1+R2",
      value: "option",
      unit: "",
    },
  ],
  seen: [
    "Home electrics page: instrument requirements (BS EN 61557, GS 38, 200 mA)",
    "Practical guide to inspection, testing and certification: safe isolation, GS 38 probes",
    "Electrical Wholesaler, May 2023: insulation resistance and 643.3.2/643.3.3",
    "Instrument manual: insulation resistance limits (two inconsistent tables)",
    "Home electrics page: order of dead and live tests",
    "Training centre guide: electrical testing sequence",
    "Revision notes: order of dead and live tests",
    "IET Wiring Matters, May 2025: minimizing live testing for initial verification (641.1, 641.4)",
    "Q&A aggregator page 'What is the maximum Zs permitted by BS7671?'",
    "Q&A page quoting a regulations answer: 1667 ohm and the 200 ohm stability note",
  ],
});
