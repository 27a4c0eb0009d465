import { rcdRequired } from "./rcd-selection.ts";
import { practice, quoted, table } from "./table.ts";

/** A number that decides whether an RCD is needed, or which. */
interface RcdLimit {
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
  rows: () => [
    { key: "additional", item: "Greatest rated residual current for additional protection", value: 0.03, unit: "A" },
    { key: "concealed", item: "Least depth of a concealed cable without an RCD", value: 50, unit: "mm" },
    { key: "outdoors", item: "Mobile equipment outdoors, greatest rating", value: 32, unit: "A" },
    { key: "ev-dc", item: "Smooth direct current that must be detected at a charging point", value: 0.006, unit: "A" },
  ],
  quotedOn: rcdRequired.quotedOn,
});

/** The least RCD type for a use whose residual current may have a direct component. */
interface RcdLoad {
  readonly use:
    | "alarms"
    | "cooker"
    | "data"
    | "door"
    | "emergency-lighting"
    | "ev-charger"
    | "heat-pump"
    | "laundry"
    | "lift"
    | "lighting"
    | "outdoor-sockets"
    | "pv"
    | "sockets"
    | "storage";
  readonly type: "A" | "F" | "B";
  readonly reason: string;
  /** Whether a direct component is certain: what is plugged in or charged always rectifies. Else the maker may know better. */
  readonly direct: "certain" | "likely";
}

export const rcdLoads = table<RcdLoad>({
  id: "rcd-loads",
  title: "Least RCD type by what is served",
  ref: "BS 7671:2018+A2:2022, 531.3.3",
  edition: "Type AC restriction since A2:2022",
  applies: "Loads with electronics in them. The maker's instructions go before this list.",
  units: { use: "", type: "", reason: "", direct: "" },
  standing: "practice",
  rows: () => [
    quoted({ use: "ev-charger", type: "A", reason: "a charging point rectifies", direct: "certain" }),
    { use: "pv", type: "A", reason: "an inverter may let direct current through", direct: "likely" },
    { use: "storage", type: "A", reason: "an inverter may let direct current through", direct: "likely" },
    { use: "heat-pump", type: "A", reason: "its compressor is driven by an inverter", direct: "likely" },
    { use: "laundry", type: "A", reason: "modern washing machines have inverter drives", direct: "likely" },
    { use: "sockets", type: "A", reason: "anything with electronics may be plugged in", direct: "certain" },
    { use: "outdoor-sockets", type: "A", reason: "anything with electronics may be plugged in", direct: "certain" },
    { use: "cooker", type: "A", reason: "induction hobs rectify", direct: "likely" },
    { use: "lighting", type: "A", reason: "LED drivers rectify", direct: "likely" },
    { use: "emergency-lighting", type: "A", reason: "LED drivers rectify", direct: "likely" },
    { use: "data", type: "A", reason: "power supplies rectify", direct: "likely" },
    { use: "lift", type: "A", reason: "its drive rectifies", direct: "likely" },
    { use: "door", type: "A", reason: "its drive rectifies", direct: "likely" },
    practice({ use: "alarms", type: "A", reason: "power supplies rectify", direct: "likely" }),
  ],
  // Quoted on these pages:
  // - IET Wiring Matters, July 2022: changes to RCD testing in A2:2022
  // - Trade magazine 2018: EV charging RCD selection, 6 mA DC
  quotedOn: 2,
});
