/** Every block of readings of a board and its ways, with the instruments it names. */
import type { Context } from "../model/installation.ts";
import type { MeterTest } from "./doubt.ts";
import { liveOfBoard } from "./rcd-tests.ts";
import { testsOf } from "./supply.ts";
import type { WayStudy } from "./way.ts";

/** Blocks that are still being written have no lines to read. */
const readable = (tests: readonly MeterTest[]): MeterTest[] => tests.filter(({ facts }) => facts !== undefined);

export const meterTests = (context: Context, studies: readonly WayStudy[]): MeterTest[] =>
  readable([
    ...testsOf<"boardDead">(context.board.facts.all("dead")),
    ...liveOfBoard(context),
    ...studies.flatMap(({ deadTests, liveTests }) => [...deadTests, ...liveTests]),
  ]);
