import { practice, table } from "./table.ts";

/** A threshold of plausibility: no limit of a standard, but where a reviewer would ask. */
interface PracticeValue {
  /** Short name for look-up. */
  readonly key: string;
  /** Reads after "Common practice, ". */
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const practiceValues = table<PracticeValue>({
  id: "practice",
  title: "Thresholds of plausibility",
  ref: "Common practice",
  edition: "any edition",
  applies: "Figures that are not wrong in themselves but that a reviewer would ask about. Never a limit.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "practice",
  rows: () => [
    practice({
      key: "loop-floor",
      item: "agreement of loop readings, least difference asked about",
      value: 0.1,
      unit: "Ω",
    }),
    practice({
      key: "loop-share",
      item: "agreement of loop readings, as a share of what is expected",
      value: 0.2,
      unit: "",
    }),
    practice({
      key: "loop-no-trip",
      item: "what a no-trip range, or the RCD in the loop, puts on a loop reading at the most",
      value: 0.3,
      unit: "Ω",
    }),
    practice({
      key: "loop-electrode",
      item: "a loop reading through an electrode, as a multiple of the electrode's own, asked about",
      value: 2,
      unit: "",
    }),
    practice({
      key: "loop-below",
      item: "a loop reading below what lies upstream, allowance for the meter",
      value: 0.02,
      unit: "Ω",
    }),
    practice({
      key: "loop-exact",
      item: "a figure that was calculated, not read: agreement to the last digit",
      value: 0.0051,
      unit: "Ω",
    }),
    practice({
      key: "loop-copies",
      item: "circuits of a board whose readings agree to the last digit",
      value: 6,
      unit: "circuits",
    }),
    practice({
      key: "plug-socket",
      item: "the sockets of a ring, a home or a cooker's switch are BS 1363, rating",
      value: 13,
      unit: "A",
    }),
    practice({ key: "loop-close", item: "circuits close to their limit, share of the limit", value: 0.95, unit: "" }),
    practice({
      key: "loop-close-count",
      item: "circuits close to their limit, how many make a pattern",
      value: 3,
      unit: "circuits",
    }),
    practice({
      key: "ze-least",
      item: "least external impedance of a single-phase public supply",
      value: 0.05,
      unit: "Ω",
    }),
    practice({ key: "fault-low", item: "fault current against the loop impedance, least share", value: 0.8, unit: "" }),
    practice({
      key: "fault-high",
      item: "fault current against the loop impedance, greatest share single-phase",
      value: 2.5,
      unit: "",
    }),
    practice({
      key: "fault-high-three",
      item: "fault current against the loop impedance, greatest share three-phase",
      value: 5,
      unit: "",
    }),
    practice({
      key: "fault-three",
      item: "three-phase fault current against the line-neutral one, least share",
      value: 1.6,
      unit: "",
    }),
    practice({
      key: "fault-feeder",
      item: "fault current of a board against what its feeder brings, least share",
      value: 0.6,
      unit: "",
    }),
    practice({
      key: "fault-feeder-gap",
      item: "impedance of a board above that of its feeder, allowance for length and meter",
      value: 0.05,
      unit: "Ω",
    }),
    practice({
      key: "fault-rise",
      item: "fault current of a board against the one that feeds it",
      value: 1.1,
      unit: "",
    }),
    practice({
      key: "fault-rise-far",
      item: "fault current of a board against the one that feeds it, beyond any uncertainty of the meter",
      value: 1.5,
      unit: "",
    }),
    practice({
      key: "load-share",
      item: "design current against the load of one resistive appliance",
      value: 0.15,
      unit: "",
    }),
    practice({
      key: "load-excess",
      item: "design current against the sum of the loads, greatest share",
      value: 2,
      unit: "",
    }),
    practice({ key: "oversize", item: "rating of a device against the next above its load", value: 2, unit: "" }),
    practice({
      key: "oversize-from",
      item: "rating of a device against its load, least load asked about",
      value: 6,
      unit: "A",
    }),
    practice({
      key: "start-direct",
      item: "starting current of a motor direct on line, multiple of Ib",
      value: 6,
      unit: "",
    }),
    practice({ key: "start-star-delta", item: "starting current in star, multiple of Ib", value: 2.5, unit: "" }),
    practice({ key: "start-soft-start", item: "starting current by soft starter, multiple of Ib", value: 3, unit: "" }),
    practice({
      key: "inrush-least",
      item: "inrush of a transformer as it is switched on, multiple of Ib, at least",
      value: 10,
      unit: "",
    }),
    practice({
      key: "inrush-most",
      item: "inrush of a transformer as it is switched on, multiple of Ib, at most",
      value: 15,
      unit: "",
    }),
    practice({ key: "start-drop", item: "voltage drop while a motor starts, at its terminals", value: 15, unit: "%" }),
    practice({
      key: "start-drive",
      item: "starting current by a variable-speed drive, multiple of Ib",
      value: 1.5,
      unit: "",
    }),
    practice({
      key: "motor-overload",
      item: "power from which a motor has overload protection",
      value: 370,
      unit: "W",
    }),
    practice({
      key: "drivers",
      item: "LED drivers on one breaker, asked about where no figure of the maker is stated",
      value: 12,
      unit: "",
    }),
    practice({
      key: "lampholders",
      item: "rating of the device before B15, B22, E14 and E27 lampholders",
      value: 16,
      unit: "A",
    }),
    practice({ key: "ring-load", item: "continuous load on a ring final circuit", value: 2000, unit: "W" }),
    practice({
      key: "bond-share",
      item: "resistance of a bonding conductor against its own length",
      value: 1.5,
      unit: "",
    }),
    practice({
      key: "bond-floor",
      item: "resistance of a bonding conductor, allowance for clamps and leads",
      value: 0.05,
      unit: "Ω",
    }),
    practice({ key: "bond-length", item: "length of bonding conductor that a reading implies", value: 100, unit: "m" }),
    practice({ key: "cable-reactance", item: "reactance of a core of a multicore cable", value: 0.00008, unit: "Ω/m" }),
    practice({
      key: "resistive-size",
      item: "size to which resistance alone decides the drop",
      value: 16,
      unit: "mm²",
    }),
    practice({
      key: "rcd-ratio",
      item: "rated residual current of an RCD upstream of another, least ratio for the nearer one to act first",
      value: 3,
      unit: "",
    }),
    practice({
      key: "rcd-quick",
      item: "time at 1 × IΔn below which a mechanism hardly opens",
      value: 0.005,
      unit: "s",
    }),
    practice({ key: "rcd-shortest", item: "shortest time in which an RCD opens", value: 0.001, unit: "s" }),
    practice({
      key: "relay-above",
      item: "overload relay above the current of its motor, share asked about",
      value: 1.25,
      unit: "",
    }),
    practice({
      key: "relay-holds",
      item: "current that an overload relay carries without opening, share of its setting",
      value: 1.05,
      unit: "",
    }),
    practice({
      key: "demand-allowance",
      item: "a stated demand against the one calculated, share asked about",
      value: 1.1,
      unit: "",
    }),
    practice({
      key: "buried-depth",
      item: "depth of a cable in the ground, less asked about",
      value: 450,
      unit: "mm",
    }),
    practice({
      key: "buried-usual",
      item: "depth of a cable in the ground, usual",
      value: 600,
      unit: "mm",
    }),
    practice({ key: "unbalance-share", item: "unbalance of three lines, share of the greatest", value: 0.4, unit: "" }),
    practice({ key: "unbalance-floor", item: "unbalance of three lines, least asked about", value: 15, unit: "A" }),
  ],
});

// The thresholds of the dead tests have a file of their own.
export * from "./dead-test-practice.ts";
