/** What an inspection did with each circuit: tested it, limited it, sampled it out with a reason, or passed it over. */

import { readArgs } from "../../grammar/readings.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { isOutsideWork } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { valuesAt, wordAt } from "../model/fact-values.ts";
import {
  type Circuit,
  covers,
  type Inspection,
  inspectionFor,
  inspectionsOf,
  isOf,
  type OfCircuits,
} from "../model/inspections.ts";
import { type AnyValue, type Fact, type Facts, isAbsent } from "../model/values.ts";

type CircuitState =
  | "not-covered"
  | "tested"
  /** Every result is a limitation. */
  | "limited"
  | "sampled-out"
  /** Under a limitation of the inspection that names it. */
  | "limitation"
  | "missing";

interface InspectedCircuit {
  readonly state: CircuitState;
  /** The blocks of its tests that belong to the inspection. */
  readonly tests: readonly Fact[];
  /** The line of the inspection that leaves it out. */
  readonly line?: Fact;
  /** The latest day it was tested on before. */
  readonly before?: string;
}

const dayOf = (header: Fact): string => wordAt(header, "on") ?? "";

/** A line that leaves circuits out leaves out those it names; without a name it is of no circuit in particular. */
export const namesCircuit = (line: OfCircuits, circuit: Circuit): boolean =>
  (line.args.board !== undefined || line.args.ways !== undefined) && isOf(line, circuit);

/** What one inspection did with a circuit. `study` is a way in its place. */
export function circuitIn(inspection: Inspection, study: WayStudy): InspectedCircuit {
  const circuit: Circuit = { board: study.context.board, way: study.way };
  const all = inspectionsOf(study.context.installation);
  const headers: readonly Fact[] = [...study.facts.all("dead"), ...study.facts.all("live")];
  const since = inspection.facts.one("last-inspected")?.args.on?.value ?? "";
  const own = headers.filter(
    (header) => dayOf(header) > since && inspectionFor(all, dayOf(header), circuit)?.header === inspection.header,
  );
  const before = headers
    .map(dayOf)
    .filter((day) => day !== "" && !own.some((header) => dayOf(header) === day) && day <= inspection.to)
    .sort()
    .at(-1);
  const known = { tests: own, ...(before === undefined ? {} : { before }) };
  if (study.isSpare || isOutsideWork(study) || !covers(inspection, circuit)) return { ...known, state: "not-covered" };
  if (own.some(({ inner }) => inner && hasResult(inner))) return { ...known, state: "tested" };
  const out = inspection.facts.all("sampled-out").find((line) => namesCircuit(line, circuit));
  if (out) return { ...known, state: "sampled-out", line: out };
  const limited = inspection.facts.all("limitation").find((line) => namesCircuit(line, circuit));
  if (limited) return { ...known, state: "limitation", line: limited };
  return { ...known, state: own.length > 0 ? "limited" : "missing" };
}

/** Whether anything in a block of tests was read. */
export const hasResult = (tests: Facts): boolean =>
  tests.list.some((fact) => resultsOf(tests.kind, fact).some((value) => !isAbsent(value)));

/** Readings and verdicts: what a line is called by, such as a point, is neither. */
function resultsOf(block: BlockKind, fact: Fact): AnyValue[] {
  const row = rowOf(block, fact.word);
  return row?.reads ? readArgs(row).flatMap(({ name }) => valuesAt(fact, name)) : [];
}
