import { quoted, table } from "./table.ts";

/** Greatest Zs with an RCD for fault protection; the row without a rating is the advice on a stable electrode. */
interface RcdLoop {
  /** Rated residual operating current, mA. */
  readonly residual: number | null;
  /** Maximum Zs = 50 V / IΔn, Ω. */
  readonly zs: number;
  /** Value printed for 230 < U0 ≤ 400 V where it differs, Ω. */
  readonly zsHigherBand: number | null;
}

export const rcdLoop = table<RcdLoop>({
  id: "zs-41.5",
  title: "Maximum Zs for RCD fault protection in TT systems (and alternative in TN)",
  ref: "BS 7671:2018+A2:2022, Table 41.5",
  edition: "18th Edition; values unchanged from BS 7671:2008 for the 230 V band",
  applies:
    "TT systems where the RCD gives fault protection; U0 50-230 V band. A separate limit (200 Ω) is advisory: a higher electrode resistance may not be stable.",
  units: { residual: "mA", zs: "Ω", zsHigherBand: "Ω" },
  standing: "computed",
  rows: () => [
    { residual: 10, zs: 5000, zsHigherBand: null },
    quoted({ residual: 30, zs: 1667, zsHigherBand: 1533 }),
    quoted({ residual: 100, zs: 500, zsHigherBand: null }),
    { residual: 300, zs: 167, zsHigherBand: null },
    { residual: 500, zs: 100, zsHigherBand: null },
    quoted(
      { residual: null, zs: 200, zsHigherBand: null },
      {},
      "electrode stability advice: resistance above 200 Ω may not be stable (Note 2 to Table 41.5)",
    ),
  ],
  notes: [
    "Cmin is not applied in 411.5.3.",
    "50 V holds in dry, ordinary locations.",
    "On a TN circuit it is better to show the limit of the overcurrent device.",
    "1533 Ω stood only in the band above 230 V of the first printing of the 17th Edition.",
  ],
  // Quoted on these pages:
  // - ElectriciansForums thread: max Zs on a 30 mA RCD (Table 41.5)
  // - ElectriciansForums thread: max Zs readings for TT
  // - IET EngX: max Zs on forms for RCD-protected circuits
  // - Training notes: ADS, disconnection times and Zs (Chapter 41)
  // - Q&A page quoting a regulations answer: 1667 ohm and the 200 ohm stability note
  quotedOn: 5,
});
