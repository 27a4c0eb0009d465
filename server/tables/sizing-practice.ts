import { practice, table } from "./table.ts";

/** The type of breaker a load usually asks for. */
interface UsualCurve {
  readonly use: "motor" | "transformer" | "heat-pump" | "lift" | "door" | "ventilation";
  readonly curve: "B" | "C" | "D";
  readonly reason: string;
}

export const usualCurves = table<UsualCurve>({
  id: "usual-curves",
  title: "Type of breaker by what is served",
  ref: "Common practice, type of breaker by inrush",
  edition: "any edition",
  applies: "Where neither the schedule nor the maker says otherwise. What is not listed takes type B.",
  units: { use: "", curve: "", reason: "" },
  standing: "practice",
  rows: () => [
    practice({ use: "motor", curve: "C", reason: "a motor draws several times its current while it starts" }),
    practice({ use: "transformer", curve: "D", reason: "its core draws many times its current as it is switched on" }),
    practice({ use: "heat-pump", curve: "C", reason: "its compressor draws more while it starts" }),
    practice({ use: "lift", curve: "C", reason: "its motor draws more while it starts" }),
    practice({ use: "door", curve: "C", reason: "its motor draws more while it starts" }),
    practice({ use: "ventilation", curve: "C", reason: "fan motors draw more while they start" }),
  ],
});

/** How the cable for a route is usually made. */
interface UsualConstruction {
  readonly route: string;
  readonly single: "singles" | "flat-twin" | "multicore" | "armoured";
  readonly three: "singles" | "multicore" | "armoured";
  /** °C. */
  readonly insulation: 70 | 90;
}

export const usualConstructions = table<UsualConstruction>({
  id: "usual-constructions",
  title: "Construction of cable by route",
  ref: "Common practice, cable by route",
  edition: "any edition",
  applies: "Where the schedule does not state how the cable is made.",
  units: { route: "", single: "", three: "", insulation: "°C" },
  standing: "practice",
  rows: () => [
    practice({ route: "conduit", single: "singles", three: "singles", insulation: 70 }),
    practice({ route: "trunking", single: "singles", three: "singles", insulation: 70 }),
    practice({ route: "clipped", single: "flat-twin", three: "multicore", insulation: 70 }),
    practice({ route: "wall", single: "flat-twin", three: "multicore", insulation: 70 }),
    practice({ route: "ceiling", single: "flat-twin", three: "multicore", insulation: 70 }),
    practice({ route: "floor", single: "flat-twin", three: "multicore", insulation: 70 }),
    practice({ route: "free-air", single: "multicore", three: "multicore", insulation: 70 }),
    practice({ route: "overhead", single: "multicore", three: "multicore", insulation: 90 }),
    practice({ route: "tray", single: "armoured", three: "armoured", insulation: 90 }),
    practice({ route: "ladder", single: "armoured", three: "armoured", insulation: 90 }),
    practice({ route: "duct", single: "armoured", three: "armoured", insulation: 90 }),
    practice({ route: "buried", single: "armoured", three: "armoured", insulation: 90 }),
  ],
});

/** A route taken for granted where none is written, for a first size only. */
interface AssumedRoute {
  readonly circuit: "dwelling" | "other";
  readonly route: string;
}

export const assumedRoutes = table<AssumedRoute>({
  id: "assumed-routes",
  title: "Route where none is written",
  ref: "Common practice, a usual route that asks much of the cable",
  edition: "any edition",
  applies: "A first size before the route is known. It is shown, and never written into a schedule.",
  units: { circuit: "", route: "" },
  standing: "practice",
  rows: () => [
    practice({ circuit: "dwelling", route: "wall method A" }),
    practice({ circuit: "other", route: "conduit method B" }),
  ],
});

/** The protective conductor flat cable is made with. */
interface FlatPair {
  /** mm². */
  readonly line: number;
  /** mm². */
  readonly cpc: number;
}

export const flatPairs = table<FlatPair>({
  id: "flat-pairs",
  title: "Protective conductor of flat twin cable",
  ref: "BS 6004, flat twin cable with protective conductor",
  edition: "product standard",
  applies: "Flat twin cable as it is sold.",
  units: { line: "mm²", cpc: "mm²" },
  standing: "practice",
  rows: () => [
    practice({ line: 1, cpc: 1 }),
    practice({ line: 1.5, cpc: 1 }),
    practice({ line: 2.5, cpc: 1.5 }),
    practice({ line: 4, cpc: 1.5 }),
    practice({ line: 6, cpc: 2.5 }),
    practice({ line: 10, cpc: 4 }),
    practice({ line: 16, cpc: 6 }),
  ],
});

/** A figure a designer starts from where the schedule gives none. */
interface SizingValue {
  readonly key: "least-breaker" | "least-breaking" | "ring-drop" | "cooker";
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const sizingValues = table<SizingValue>({
  id: "sizing",
  title: "What a design starts from",
  ref: "Common practice",
  edition: "any edition",
  applies: "Proposals of a device and a cable. Never a limit.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "practice",
  rows: () => [
    practice({ key: "least-breaker", item: "smallest breaker usually fitted", value: 6, unit: "A" }),
    practice({ key: "least-breaking", item: "smallest breaking capacity usually bought", value: 6000, unit: "A" }),
    practice({ key: "cooker", item: "device of a cooker's circuit in a home", value: 32, unit: "A" }),
    practice({
      key: "ring-drop",
      item: "current for the drop of a ring of 32 A without stated load: 20 A at the far point, the rest spread evenly",
      value: 26,
      unit: "A",
    }),
  ],
});
