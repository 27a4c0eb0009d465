import { rcdRequired } from "./rcd-selection.ts";
import { practice, quoted, table } from "./table.ts";

/** A number that decides whether an RCD is needed, or which. */
export interface RcdLimit {
  /** Short name for look-up. */
  readonly key: "additional" | "concealed" | "outdoors" | "ev-dc";
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const rcdLimits = table<RcdLimit>({
  id: "rcd-limits",
  title: "Limits for additional protection",
  ref: "BS 7671:2018+A2:2022, 415.1.1, 522.6.202, 411.3.3 and 722.531.3.101",
  edition: "18th Edition; concealed cables and 30 mA since the 17th",
  applies: "Additional protection by RCDs.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "quoted",
  rows: [
    { key: "additional", item: "Greatest rated residual current for additional protection", value: 0.03, unit: "A" },
    { key: "concealed", item: "Least depth of a concealed cable without an RCD", value: 50, unit: "mm" },
    { key: "outdoors", item: "Mobile equipment outdoors, greatest rating", value: 32, unit: "A" },
    { key: "ev-dc", item: "Smooth direct current that must be detected at a charging point", value: 0.006, unit: "A" },
  ],
  quotedOn: rcdRequired.quotedOn,
});

/** The least RCD type for a use whose residual current may have a direct component. */
export interface RcdLoad {
  readonly use: string;
  readonly type: "A" | "F" | "B";
  readonly reason: string;
}

export const rcdLoads = table<RcdLoad>({
  id: "rcd-loads",
  title: "Least RCD type by what is served",
  ref: "BS 7671:2018+A2:2022, 531.3.3",
  edition: "Type AC restriction since A2:2022",
  applies: "Loads with electronics in them. The maker's instructions go before this list.",
  units: { use: "", type: "", reason: "" },
  standing: "practice",
  rows: [
    quoted({ use: "ev-charger", type: "A", reason: "a charging point rectifies" }),
    { use: "pv", type: "A", reason: "an inverter may let direct current through" },
    { use: "storage", type: "A", reason: "an inverter may let direct current through" },
    { use: "heat-pump", type: "A", reason: "its compressor is driven by an inverter" },
    { use: "laundry", type: "A", reason: "modern washing machines have inverter drives" },
    { use: "sockets", type: "A", reason: "anything with electronics may be plugged in" },
    { use: "outdoor-sockets", type: "A", reason: "anything with electronics may be plugged in" },
    { use: "cooker", type: "A", reason: "induction hobs rectify" },
    { use: "lighting", type: "A", reason: "LED drivers rectify" },
    { use: "emergency-lighting", type: "A", reason: "LED drivers rectify" },
    { use: "data", type: "A", reason: "power supplies rectify" },
    { use: "lift", type: "A", reason: "its drive rectifies" },
    { use: "door", type: "A", reason: "its drive rectifies" },
    practice({ use: "alarms", type: "A", reason: "power supplies rectify" }),
  ],
  // Quoted on these pages:
  // - IET Wiring Matters, July 2022: changes to RCD testing in A2:2022
  // - Trade magazine 2018: EV charging RCD selection, 6 mA DC
  quotedOn: 2,
});
