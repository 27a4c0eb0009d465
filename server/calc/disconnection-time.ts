import { alike } from "../memo/alike.ts";
import { disconnectionScope, disconnectionTimes } from "../tables/disconnection.ts";
import type { Edition } from "../tables/editions.ts";
import { combine } from "../tables/source.ts";
import { nominalVoltage, supplyValues } from "../tables/supply.ts";
import { cellOf, known, rowOf } from "../tables/table.ts";
import type { Calculated, Step } from "./result.ts";
import { amps, looked, remark, seconds, volts } from "./result.ts";

export type System = "TN-S" | "TN-C-S" | "TN-C" | "TT" | "IT";

/** What decides the time allowed for disconnection. Rating in A, U0 in V. */
export interface DisconnectionQuestion {
  readonly system: System;
  readonly U0: number;
  /** False for a distribution circuit. */
  readonly final: boolean;
  /** Whether the circuit has one or more socket-outlets. */
  readonly sockets: boolean;
  readonly rating: number;
  readonly edition: Edition;
}

const extraLow = 50;
const reducedLow = known(supplyValues, { key: "reduced-low-voltage" }, "value").value;

/** A supply within +10 % and −6 % is a nominal 230 V one, whatever figure a schedule gives. */
const nominal = nominalVoltage.toEarth;
const least = nominal * 0.94;
const greatest = nominal * 1.1;

/**
 * Greatest disconnection time (s): Table 41.1 for final circuits in its scope, else 5 s in TN and 1 s in TT. Undefined
 * for IT, whose time depends on how its earths are joined, and below 50 V, where the table has no row.
 */
export const disconnectionTime = alike(
  ({ system, U0, final, sockets, rating, edition }: DisconnectionQuestion) =>
    `${system}|${U0}|${final}|${sockets}|${rating}|${edition.id}`,
  computeDisconnectionTime,
);

function computeDisconnectionTime(question: DisconnectionQuestion): Calculated | undefined {
  if (question.system === "IT") return undefined;
  if (question.U0 > extraLow && question.U0 <= reducedLow) return reduced(question.U0);
  const family = question.system === "TT" ? "TT" : "TN";
  return inScope(question) ? tabulated(question, family) : longer(question, family);
}

/** Reduced low voltage: 5 s for every circuit, with sockets or without. */
function reduced(U0: number): Calculated {
  const { value, source } = known(disconnectionScope, { key: "reduced-low" }, "tn");
  const steps = [looked(`time at reduced low voltage, ${volts(U0)} to earth`, source.ref, seconds(value))];
  return { value, unit: "s", steps, source };
}

function inScope({ final, sockets, rating, edition }: DisconnectionQuestion): boolean {
  return final && rating <= scope(sockets, edition);
}

function scope(sockets: boolean, edition: Edition): number {
  return sockets ? edition.socketDisconnectionScope : edition.fixedDisconnectionScope;
}

function tabulated(question: DisconnectionQuestion, family: "TN" | "TT"): Calculated | undefined {
  const U0 = question.U0 >= least && question.U0 <= greatest ? nominal : question.U0;
  const row = disconnectionTimes.rows.find(
    ({ facts }) => facts.system === family && U0 > facts.over && (facts.upTo === null || U0 <= facts.upTo),
  );
  if (row === undefined) return undefined;
  const { value, source } = cellOf(disconnectionTimes, row, "ac");
  // The note on this row speaks of direct current, which is not asked for here.
  const asked = { ref: source.ref, standing: source.standing };
  const steps = [
    scopeStep(question, true),
    looked(`time for ${family} at U0 ${volts(U0)}`, source.ref, seconds(value)),
  ];
  return { value, unit: "s", steps, source: combine(asked, question.edition.sources.disconnectionScope) };
}

function longer(question: DisconnectionQuestion, family: "TN" | "TT"): Calculated {
  const key = family === "TN" ? "distribution-tn" : "distribution-tt";
  const { value, source: table } = known(disconnectionScope, { key }, family === "TN" ? "tn" : "tt");
  const clause = rowOf(disconnectionScope, { key })?.facts.clause;
  const source = clause ? { ...table, ref: `BS 7671:2018+A2:2022, ${clause}` } : table;
  const steps = [
    scopeStep(question, false),
    looked(`time for other circuits of ${family}`, source.ref, seconds(value)),
  ];
  return { value, unit: "s", steps, source: combine(source, question.edition.sources.disconnectionScope) };
}

function scopeStep({ final, sockets, rating, edition }: DisconnectionQuestion, within: boolean): Step {
  if (!final) return remark("distribution circuit: outside Table 41.1");
  const kind = sockets ? "final circuit with sockets" : "final circuit of fixed equipment";
  const most = scope(sockets, edition);
  // The 16th Edition counts every circuit with sockets in, whatever its rating.
  if (!Number.isFinite(most)) return remark(`${kind}, of any rating: Table 41.1 applies`);
  return remark(
    within
      ? `${kind}, ${amps(rating)}, not above ${amps(most)}: Table 41.1 applies`
      : `${kind}, ${amps(rating)}, above ${amps(most)}: outside Table 41.1`,
  );
}
