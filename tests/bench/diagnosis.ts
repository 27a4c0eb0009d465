/**
 * How often the true fault comes first, on generated circuits whose readings have a meter's errors: anywhere within
 * ± (2 % + 0.02 Ω), then two decimals. Run: node tests/bench/diagnosis.ts [circuits per kind] [part of a title]
 */

import type { Conductor } from "../../server/calc/circuit-network.ts";
import { type CircuitFault, type CircuitRuns, legEnd } from "../../server/calc/circuit-network.ts";
import { diagnose } from "../../server/diagnosis/index.ts";
import { limitOf, type Sheet, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import { type Links, radialOf, ringOf, sheetOf, sizes25 } from "../diagnosis/helpers.ts";

const each = Number(process.argv[2] ?? 100);
const only = process.argv[3];
let state = 7671;
/** The same circuits on every run. */
const next = (): number => {
  state = (state * 1103515245 + 12345) % 2147483648;
  return state / 2147483648;
};
const between = (low: number, high: number): number => low + (high - low) * next();
const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
const oneOf = <T>(items: readonly T[]): T => items[whole(0, items.length - 1)] as T;
const conductor = (): Conductor => oneOf(["line", "neutral", "cpc"]);
const meter = (ohms: number): number =>
  Number.isFinite(ohms) ? Math.max(0, ohms + between(-1, 1) * limitOf(usualAccuracy, ohms)) : ohms;

function anyRing(): CircuitRuns {
  const count = whole(4, 12);
  const gaps = Array.from({ length: count + 1 }, () => between(2, 10));
  const along = gaps.map((_, at) => gaps.slice(0, at + 1).reduce((sum, gap) => sum + gap, 0));
  const spurs = Array.from(
    { length: whole(0, 2) },
    (_, at) => [`s${whole(1, count)}`, `x${at}`, between(2, 6)] as const,
  );
  return ringOf(along.at(-1) ?? 0, along.slice(0, -1), spurs);
}

const anyRadial = (): CircuitRuns => radialOf(Array.from({ length: whole(2, 6) }, () => between(3, 12)));

interface Case {
  readonly faults?: readonly CircuitFault[];
  readonly links?: Links;
  readonly actual?: CircuitRuns;
  readonly written?: (sheet: Sheet) => Sheet;
  /** The kinds of explanation that are right. */
  readonly kinds: readonly string[];
  /** What the explanation must speak of besides. */
  readonly says?: readonly string[];
  readonly where?: string;
}

const scaled = (circuit: CircuitRuns, by: number): CircuitRuns => ({
  ...circuit,
  legs: circuit.legs.map((leg) => ({ ...leg, length: leg.length * by })),
});

const changed = (sheet: Sheet, change: (value: number, at: number) => number): Sheet => ({
  ...sheet,
  readings: sheet.readings.map((reading, at) => ({ ...reading, value: change(reading.value, at) })),
});

const bridgeOf = (circuit: CircuitRuns): CircuitFault => {
  const names = circuit.legs.filter(({ main, to }) => main && to !== legEnd).map(({ to }) => to);
  const from = whole(0, names.length - 3);
  const to = whole(from + 2, names.length - 1);
  return { kind: "bridge", from: names[from] ?? "", to: names[to] ?? "", length: between(2, 10) };
};

const joint = (circuit: CircuitRuns): Case => {
  const which = conductor();
  const faults = [
    { kind: "joint", conductor: which, leg: whole(0, circuit.legs.length - 1), ohms: between(0.15, 1) } as const,
  ];
  return { faults, kinds: [`joint-${which}`] };
};
const contact = (circuit: CircuitRuns): Case => {
  const which = conductor();
  const faults = [{ kind: "contact", conductor: which, place: oneOf(circuit.places), ohms: between(0.15, 1) } as const];
  return { faults, kinds: [`contact-${which}`] };
};
const opened = (circuit: CircuitRuns): Case => {
  const which = conductor();
  const main = circuit.legs.flatMap((leg, at) => (leg.main ? [at] : []));
  return { faults: [{ kind: "open", conductors: [which], leg: oneOf(main) }], kinds: [`open-${which}`] };
};
const length = (circuit: CircuitRuns): Case => ({
  actual: scaled(circuit, oneOf([between(0.35, 0.55), between(1.9, 3)])),
  kinds: ["length"],
});
const slip = (): Case => ({
  written: (sheet) => {
    const which = whole(0, sheet.readings.length - 1);
    const power = oneOf([10, 100, 0.1]);
    return changed(sheet, (value, at) => (at === which ? value * power : value));
  },
  kinds: ["decimal-point"],
});
const leads = (): Case => {
  const offset = between(0.12, 0.4);
  return { written: (sheet) => changed(sheet, (value) => value + offset), kinds: ["leads"] };
};
const size = (circuit: CircuitRuns): Case => ({
  actual: { ...circuit, perMetre: { ...circuit.perMetre, cpc: 0.0181 } },
  kinds: ["size-cpc"],
});
const metal = (circuit: CircuitRuns): Case => {
  const { from, to } = circuit.closed
    ? (bridgeOf(circuit) as { from: string; to: string })
    : { from: "board first leg", to: circuit.places.at(-1) ?? "" };
  return { faults: [{ kind: "metal", from, to, ohms: between(0.005, 0.1) }], kinds: ["metal"] };
};

const rings: Record<string, (circuit: CircuitRuns) => Case> = {
  sound: () => ({ kinds: ["sound"] }),
  "open conductor": opened,
  "cable cut": (circuit) => ({
    faults: [{ kind: "open", conductors: ["line", "neutral", "cpc"], leg: whole(0, circuit.places.length - 3) }],
    kinds: ["open-all"],
  }),
  "poor joint": joint,
  "poor contact": contact,
  bridge: (circuit) => ({ faults: [bridgeOf(circuit)], kinds: ["bridge"] }),
  "spur not drawn": (circuit) => ({
    faults: [{ kind: "spur", place: oneOf(circuit.places), length: between(4, 12) }],
    kinds: ["spur"],
  }),
  "crossed at a point": (circuit) => {
    const pair = oneOf([
      ["line", "neutral"],
      ["line", "cpc"],
      ["neutral", "cpc"],
    ] as const);
    return { faults: [{ kind: "swapped", pair, place: oneOf(circuit.places) }], kinds: [`swapped-${pair.join("-")}`] };
  },
  "legs not crossed": () => ({ links: { neutral: "same-leg", cpc: "same-leg" }, kinds: ["same-leg-neutral-cpc"] }),
  "one link": () => {
    const how = oneOf(["one", "last"] as const);
    return { links: { neutral: how, cpc: how }, kinds: ["one-link-neutral-cpc"] };
  },
  "cpc of 1.0 mm²": size,
  "leads not nulled": leads,
  "metal beside cpc": metal,
  "columns exchanged": () => ({
    written: (sheet) => {
      const place = oneOf(sheet.circuit.places);
      const [one, other] = [`L-N at ${place}`, `L-E at ${place}`];
      const value = (name: string) => sheet.readings.find((reading) => reading.name === name)?.value ?? 0;
      const [first, second] = [value(one), value(other)];
      return changed(sheet, (own, at) => {
        const name = sheet.readings[at]?.name;
        return name === one ? second : name === other ? first : own;
      });
    },
    kinds: ["exchanged-point"],
  }),
  "column copied": () => ({
    written: (sheet) =>
      changed(sheet, (own, at) => {
        const name = sheet.readings[at]?.name ?? "";
        const other = sheet.readings.find((reading) => reading.name === name.replace("L-E", "L-N"));
        return name.startsWith("L-E") ? (other?.value ?? own) : own;
      }),
    kinds: ["copied-cpc"],
  }),
  "slip of the point": slip,
  "length wrong": length,
};

const radials: Record<string, (circuit: CircuitRuns) => Case> = {
  sound: () => ({ kinds: ["sound"] }),
  "open conductor": (circuit) => {
    const which = oneOf(["line", "cpc"] as const);
    return {
      faults: [{ kind: "open", conductors: [which], leg: whole(0, circuit.legs.length - 1) }],
      kinds: [`open-${which}`],
    };
  },
  "poor joint": (circuit) => {
    const which = oneOf(["line", "cpc"] as const);
    const leg = whole(0, circuit.legs.length - 2);
    return { faults: [{ kind: "joint", conductor: which, leg, ohms: between(0.15, 1) }], kinds: [`joint-${which}`] };
  },
  "poor contact": (circuit) => {
    const which = oneOf(["line", "cpc"] as const);
    const place = oneOf(circuit.places.slice(0, -1));
    return {
      faults: [{ kind: "contact", conductor: which, place, ohms: between(0.15, 1) }],
      kinds: [`contact-${which}`],
    };
  },
  "cpc of 1.0 mm²": size,
  "leads not nulled": leads,
  "metal beside cpc": metal,
  "slip of the point": slip,
  "length wrong": length,
};

const words = { line: "line", neutral: "neutral", cpc: "protective conductor" } as const;
const others = (which: Conductor): Conductor =>
  oneOf((["line", "neutral", "cpc"] as const).filter((one) => one !== which));
const at = (circuit: CircuitRuns) => oneOf(circuit.places);
const contactAt = (place: string, which: Conductor): CircuitFault => ({
  kind: "contact",
  conductor: which,
  place,
  ohms: between(0.2, 1),
});
/** Two that have nothing to do with each other. */
const rarePairs: Record<string, (circuit: CircuitRuns) => Case> = {
  "joint and open": () => {
    const which = conductor();
    const other = others(which);
    const [leg, broken] = [whole(0, 3), whole(0, 3)];
    return {
      faults: [
        { kind: "joint", conductor: which, leg, ohms: between(0.2, 1) },
        { kind: "open", conductors: [other], leg: broken },
      ],
      kinds: ["two-conductors"],
      says: [words[which], words[other]],
    };
  },
  "joint and contact": (circuit) => {
    const [which, place] = [conductor(), at(circuit)];
    return {
      faults: [
        { kind: "joint", conductor: which, leg: whole(0, 3), ohms: between(0.2, 1) },
        contactAt(place, conductor()),
      ],
      kinds: ["cable-and-point"],
      says: [words[which], `at ${place}`],
    };
  },
  "open and contact": (circuit) => {
    const [which, place] = [conductor(), at(circuit)];
    return {
      faults: [{ kind: "open", conductors: [which], leg: whole(0, 3) }, contactAt(place, conductor())],
      kinds: ["cable-and-point"],
      says: [words[which], `at ${place}`],
    };
  },
  "open and crossed": (circuit) => {
    const [which, place] = [conductor(), at(circuit)];
    return {
      faults: [
        { kind: "open", conductors: [which], leg: whole(0, 3) },
        { kind: "swapped", pair: ["line", "neutral"], place },
      ],
      kinds: ["cable-and-point"],
      says: [words[which], `at ${place}`],
    };
  },
  "two contacts": (circuit) => {
    const one = whole(0, circuit.places.length - 2);
    const [first = "", second = ""] = [circuit.places[one], circuit.places[one + 1]];
    return {
      faults: [contactAt(first, "line"), contactAt(second, conductor())],
      kinds: ["two-points", "two-spurs"],
      says: [`at ${first}`, `at ${second}`],
    };
  },
  "leads and joint": (circuit) => {
    const offset = between(0.12, 0.4);
    return {
      ...joint(circuit),
      written: (sheet) => changed(sheet, (value) => value + offset),
      kinds: ["leads-and-fault"],
    };
  },
  "slip and open": (circuit) => ({ ...opened(circuit), ...slip(), kinds: ["fault-and-slip"] }),
  "slip and contact": (circuit) => ({ ...contact(circuit), ...slip(), kinds: ["fault-and-slip"] }),
};

const radialPairs: Record<string, (circuit: CircuitRuns) => Case> = {
  "two joints": (circuit) => ({
    faults: [
      { kind: "joint", conductor: "line", leg: 0, ohms: between(0.2, 1) },
      { kind: "joint", conductor: "line", leg: circuit.legs.length - 2, ohms: between(0.2, 1) },
    ],
    kinds: ["two-in-one-conductor"],
  }),
  "joints line and cpc": (circuit) => ({
    faults: [
      { kind: "joint", conductor: "line", leg: 0, ohms: between(0.2, 1) },
      { kind: "joint", conductor: "cpc", leg: circuit.legs.length - 2, ohms: between(0.2, 1) },
    ],
    kinds: ["two-conductors"],
  }),
  "joint and contact": (circuit) => {
    const place = circuit.places[1] ?? "";
    return {
      faults: [{ kind: "joint", conductor: "line", leg: 0, ohms: between(0.2, 1) }, contactAt(place, "cpc")],
      kinds: ["cable-and-point"],
      says: [`at ${place}`],
    };
  },
  "slip and joint": () => ({
    faults: [{ kind: "joint", conductor: "cpc", leg: 1, ohms: between(0.3, 1) }],
    ...slip(),
    kinds: ["fault-and-slip"],
  }),
};

const longRadial = (): CircuitRuns => radialOf(Array.from({ length: whole(4, 7) }, () => between(3, 12)));

let slowest = 0;
const times: number[] = [];

function run(title: string, make: () => CircuitRuns, cases: Record<string, (circuit: CircuitRuns) => Case>): void {
  if (only && !title.includes(only)) return;
  console.log(`\n${title}, ${each} of each`);
  console.log(
    `${"fault".padEnd(20)} ${["not seen", "1st", "or tied", "in 3", "of seen", "none fits", "no test"].map((word) => word.padStart(9)).join(" ")}`,
  );
  for (const [name, makeCase] of Object.entries(cases)) {
    const count = { sound: 0, first: 0, tied: 0, three: 0, none: 0, untold: 0 };
    for (let at = 0; at < each; at++) {
      const circuit = make();
      const { faults = [], links = {}, actual = circuit, written, kinds, says = [] } = makeCase(circuit);
      const read = sheetOf(circuit, { faults, links, meter }, actual, sizes25);
      const sheet = written ? written(read) : read;
      const before = process.cpuUsage();
      const { fits, explanations, nextTest } = diagnose(sheet);
      if (!fits) {
        const { user, system } = process.cpuUsage(before);
        times.push((user + system) / 1000);
        slowest = Math.max(slowest, times.at(-1) ?? 0);
      }
      const rank = explanations.findIndex(
        ({ id, sentence }) => kinds.includes(id) && says.every((word) => sentence.includes(word)),
      );
      if (process.env.NONE && !fits && !explanations[0]?.fits)
        console.log(
          JSON.stringify(faults),
          explanations.slice(0, 2).map(({ sentence, score }) => `${score.toFixed(0)} ${sentence}`),
        );
      if (fits) count.sound++;
      else if (!explanations[0]?.fits) count.none++;
      if (explanations[0]?.fits && explanations.filter(({ alike }) => alike).length > 1 && !nextTest) {
        count.untold++;
        if (process.env.TELL) console.log(explanations.filter(({ alike }) => alike).map(({ sentence }) => sentence));
      }
      if (rank === 0) count.first++;
      if (rank >= 0 && explanations[rank]?.alike) count.tied++;
      if (rank >= 0 && rank < 3) count.three++;
    }
    const seen = each - count.sound;
    const share = seen > 0 ? (each * count.tied) / seen : each;
    const cells = [count.sound, count.first, count.tied, count.three, share, count.none, count.untold];
    console.log(
      `${name.padEnd(20)} ${cells.map((cell) => `${Math.round((100 * cell) / each)} %`.padStart(9)).join(" ")}`,
    );
  }
}

run("Rings of 4 to 12 points", anyRing, rings);
run("Radials of 2 to 6 points", anyRadial, radials);
run("Rings, two at once", anyRing, rarePairs);
run("Radials of 4 to 7 points, two at once", longRadial, radialPairs);
times.sort((one, other) => one - other);
console.log(
  `\ndiagnosis, time of the processor: median ${times[Math.floor(times.length / 2)]?.toFixed(1)} ms, nine of ten within ${times[Math.floor(times.length * 0.9)]?.toFixed(1)} ms, slowest ${slowest.toFixed(1)} ms`,
);
