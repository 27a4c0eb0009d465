/** Quick predictions of every reading of a sheet: the sound network is solved once, faults are changes of it. */

import type { Conductor } from "../calc/circuit-network.ts";
import { boardLinks, conductorNetwork, legOhms, nodeOf } from "../calc/circuit-network.ts";
import { type BoardLinks, type Measurement, portOf } from "../calc/circuit-readings.ts";
import { type PlacedPort, type Port, type Survey, surveyOf, withBranches } from "../calc/network-survey.ts";
import { soundReading, standings } from "../calc/sound-readings.ts";
import type { Predict } from "./fit.ts";
import type { Sheet } from "./sheet.ts";

/** A conductor of one leg, or a new branch, whose conductance changes with the size of a fault. */
export interface Change {
  readonly conductor: Conductor;
  readonly port: Port;
  /** Conductance added, S; taken away where negative. */
  readonly siemens: (size: number) => number;
}

type Part = "line" | "neutral" | "cpc" | "L-N" | "L-E";

const conductorsIn: Readonly<Record<Part, readonly Conductor[]>> = {
  line: ["line"],
  neutral: ["neutral"],
  cpc: ["cpc"],
  "L-N": ["line", "neutral"],
  "L-E": ["line", "cpc"],
};

const partOf = (measurement: Measurement): Part => {
  if (measurement.kind === "round" || measurement.kind === "tails")
    return measurement.other === "neutral" ? "L-N" : "L-E";
  if (measurement.kind === "pins") return measurement.joined === "neutral" ? "L-N" : "L-E";
  return measurement.conductor;
};

export class Predictions {
  readonly sheet: Sheet;
  /** What the sound circuit reads. */
  readonly sound: Float64Array;
  readonly #parts: readonly {
    part: Part;
    places: number[];
    ports: PlacedPort[];
    survey: Survey;
  }[];

  constructor(sheet: Sheet) {
    this.sheet = sheet;
    const { circuit, readings } = sheet;
    const names = [...new Set(readings.map(({ measurement }) => partOf(measurement)))];
    this.#parts = names.map((part) => {
      const places = [...readings.keys()].filter((at) => readings.at(at) && partOf(measurementAt(sheet, at)) === part);
      // The pins of a sound circuit are its terminals, so the network does without them.
      const terminalsOf = (at: number): Port => terminals(portOf(measurementAt(sheet, at)));
      const cables = conductorsIn[part].flatMap((conductor) => conductorNetwork({ ...circuit, places: [] }, conductor));
      const links = part === "L-N" || part === "L-E" ? boardLinks(circuit, otherOf(part), "opposite") : [];
      const survey = surveyOf([...cables, ...links]);
      return { part, places, ports: places.map((at) => survey.place(terminalsOf(at))), survey };
    });
    this.sound = Float64Array.from(this.withLinks({}));
  }

  /** By formula, with the legs joined otherwise at the board in one or both rounds. */
  withLinks(
    links: { readonly neutral?: BoardLinks; readonly cpc?: BoardLinks },
    perMetre = this.sheet.circuit.perMetre,
  ): number[] {
    const { circuit, readings } = this.sheet;
    const places = standings(circuit);
    return readings.map(({ measurement }) =>
      soundReading(
        { closed: circuit.closed, perMetre },
        places,
        measurement,
        measurement.kind === "round" ? links[measurement.other] : undefined,
      ),
    );
  }

  /** Predictions with changes of the cable, by the size of what changes. */
  changed(changes: readonly Change[]): Predict {
    const solved = this.#parts.flatMap(({ part, places, ports, survey }) => {
      const here = changes.filter(({ conductor }) => conductorsIn[part].includes(conductor));
      if (here.length === 0) return [];
      const answer = withBranches(
        survey,
        ports,
        here.map(({ port }) => survey.place(port)),
      );
      return [{ places, answer, here }];
    });
    return (size) => {
      const values = this.sound.slice();
      for (const { places, answer, here } of solved) {
        const found = answer(here.map(({ siemens }) => siemens(size)));
        for (const [index, at] of places.entries()) values[at] = found[index] ?? 0;
      }
      return values;
    };
  }

  /** The change that a break, or a joint of a size, makes in a conductor of a leg. */
  ofLeg(conductor: Conductor, leg: number, defect: "break" | "joint"): Change {
    const { circuit } = this.sheet;
    const { from, to } = circuit.legs[leg] ?? { from: "", to: "" };
    const own = legOhms(circuit, leg, conductor);
    const port = { from: nodeOf(conductor, from), to: nodeOf(conductor, to) };
    return {
      conductor,
      port,
      siemens: (size) => (defect === "break" ? -1 / own : 1 / (own + size) - 1 / own),
    };
  }

  /** A new path between two places: its Ω by its size. */
  between(conductor: Conductor, from: string, to: string, ohms: (size: number) => number): Change {
    const port = { from: nodeOf(conductor, from), to: nodeOf(conductor, to) };
    return { conductor, port, siemens: (size) => 1 / ohms(size) };
  }
}

const otherOf = (part: "L-N" | "L-E"): Conductor => (part === "L-N" ? "neutral" : "cpc");

const measurementAt = ({ readings }: Sheet, at: number): Measurement =>
  readings[at]?.measurement ?? { kind: "ends", conductor: "line" };

const terminals = ({ from, to }: Port): Port => ({
  from: from.replace(/^pin /, ""),
  to: to.replace(/^pin /, ""),
});
