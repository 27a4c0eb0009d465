import { memory, quoted, table } from "./table.ts";

/** A figure for currents that flow in protective conductors in normal service. */
export interface LeakageLimit {
  /** Short name for look-up. */
  readonly key: "share" | "high" | "single-cpc" | "protected-cpc";
  readonly item: string;
  readonly value: number;
  readonly unit: string;
  readonly clause: string;
}

export const leakageLimits = table<LeakageLimit>({
  id: "protective-currents",
  title: "Protective conductor currents in normal service",
  ref: "BS 7671:2018+A2:2022, 531.3.2 and 543.7.1.203",
  edition: "The share behind an RCD since the 18th Edition; the rest since the 16th",
  applies: "Equipment with filters and electronics in normal service, without a fault.",
  units: { key: "", item: "", value: "", unit: "", clause: "" },
  standing: "quoted",
  rows: () => [
    quoted(
      {
        key: "share",
        item: "Currents behind one RCD together, share of its rated residual current",
        value: 0.3,
        unit: "",
        clause: "531.3.2",
      },
      {},
      "The 17th Edition gave no figure.",
    ),
    { key: "high", item: "Protective conductor current that is high", value: 0.01, unit: "A", clause: "543.7.1.203" },
    {
      key: "single-cpc",
      item: "One protective conductor that is large enough alone",
      value: 10,
      unit: "mm²",
      clause: "543.7.1.203",
    },
    memory({
      key: "protected-cpc",
      item: "One protective conductor with mechanical protection",
      value: 4,
      unit: "mm²",
      clause: "543.7.1.203",
    }),
  ],
  // Quoted on these pages:
  // - Maker's page: residual current devices, 531.3.2 in A2:2022
  // - Tester maker's page: leakage current and the 18th Edition
  // - IET EngX: high-integrity earthing, 543.7.1.203
  quotedOn: 3,
});
