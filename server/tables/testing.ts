import { quoted, table } from "./table.ts";

/** A precaution while testing. */
interface TestPrecaution {
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
  standing: "quoted",
  rows: () => [
    quoted(
      {
        key: "continuity-instrument",
        rule: "Continuity tester: no-load voltage / short-circuit current",
        value: "4-24 / ≥200",
        unit: "V / mA",
      },
      {},
      "From the instrument standard of the 16th Edition's time.",
    ),
    quoted(
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
    quoted(
      { key: "fused-leads", rule: "Test fuse in leads (older guidance)", value: 500, unit: "mA" },
      {},
      "GS 38 calls for fused or current-limited leads on some instruments.",
    ),
    {
      key: "isolation",
      rule: "Safe isolation: approved voltage indicator plus proving unit, locking and notices",
      value: "yes",
      unit: "",
    },
    quoted(
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
  // Quoted on these pages:
  // - Home electrics page: instrument requirements (BS EN 61557, GS 38, 200 mA)
  // - Practical guide to inspection, testing and certification: safe isolation, GS 38 probes
  // - Electrical Wholesaler, May 2023: insulation resistance and 643.3.2/643.3.3
  // - Instrument manual: insulation resistance limits (two inconsistent tables)
  // - Home electrics page: order of dead and live tests
  // - Training centre guide: electrical testing sequence
  // - Revision notes: order of dead and live tests
  // - IET Wiring Matters, May 2025: minimizing live testing for initial verification (641.1, 641.4)
  // - Q&A aggregator page 'What is the maximum Zs permitted by BS7671?'
  // - Q&A page quoting a regulations answer: 1667 ohm and the 200 ohm stability note
  quotedOn: 10,
});
