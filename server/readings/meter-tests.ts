/** Every block of readings, with the instruments it names. */

import { testsOf } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Context, Installation } from "../model/installation.ts";
import { type Fact, type FactOf, Facts, innerOf } from "../model/values.ts";
import { inOrder } from "../text/order.ts";
import { liveOfBoard } from "./rcd-tests.ts";

/** A dated block of readings, and the instruments it names. */
export interface MeterTest {
  readonly header: Fact;
  readonly with: readonly string[];
  readonly facts: Facts;
}

/** Blocks that are still being written have no lines to read. */
const readable = (tests: readonly MeterTest[]): MeterTest[] => tests.filter(({ facts }) => facts !== undefined);

export const deadOfBoard = ({ board }: Pick<Context, "board">) => testsOf<"boardDead">(board.facts.all("dead"));

export const meterTests = (context: Context, studies: readonly WayStudy[]): MeterTest[] =>
  readable([
    ...deadOfBoard(context),
    ...liveOfBoard(context),
    ...studies.flatMap(({ deadTests, liveTests }) => [...deadTests, ...liveTests]),
  ]);

/** The days of tests of a supply, the latest first, and its plain lines where they say when they were measured. */
export function supplyTests(supply: Facts<"supply"> | undefined): (MeterTest & { readonly on: string })[] {
  if (!supply) return [];
  const measured = supply.one("measured");
  const days = testsOf<"supplyLive">(supply.all("live")).filter(({ facts }) => facts !== undefined);
  if (!measured) return days;
  const read = new Set(days.flatMap(({ facts }) => facts.list));
  const plain = supply.list.filter((fact) => !fact.inner && !read.has(fact));
  return [...days, plainDay(measured, new Facts("supply", plain, supply.broken))].sort((a, b) => inOrder(b.on, a.on));
}

const plainDay = (header: FactOf<"supply", "measured">, facts: Facts<"supply">) => ({
  on: header.args.on?.value ?? "",
  header,
  with: (header.args.with ?? []).map(({ value }) => value),
  facts,
});

export const supplyMeterTests = ({ head }: Pick<Installation, "head">): MeterTest[] =>
  supplyTests(innerOf(head.facts.one("supply"), "supply"));
