import type { Installation, InstrumentFact } from "../model/installation.ts";
import type { Fact, Facts, Val } from "../model/values.ts";
import { blocksIn, partsOf } from "./blocks.ts";
import { keptWith } from "./kept.ts";

/** A dated line that says, or should say, with which instrument its readings were taken. */
export interface TestDay {
  readonly header: Fact;
  readonly on: Val<string>;
  readonly with: readonly Val<string>[];
  readonly facts: Facts | undefined;
}

const dated: ReadonlySet<string> = new Set(["dead", "live", "measured"]);

interface DatedArgs {
  readonly on?: Val<string>;
  readonly with?: readonly Val<string>[];
}

const testDaysIn = keptWith((part: Parameters<typeof blocksIn>[0]): readonly TestDay[] =>
  blocksIn(part).flatMap(({ facts }) =>
    facts.list.flatMap((fact) => {
      const { on, with: used = [] } = fact.args as DatedArgs;
      return dated.has(fact.word) && on ? [{ header: fact, on, with: used, facts: fact.inner }] : [];
    }),
  ),
);

/** Every day of tests in an installation, the supply's own figures among them. */
export const testDaysOf = (installation: Installation): TestDay[] => partsOf(installation).flatMap(testDaysIn);

/** What is known of an instrument. */
export const factsOf = (instrument: InstrumentFact): Facts<"instrument"> | undefined =>
  instrument.inner as Facts<"instrument"> | undefined;

/** The instruments an installation's tests were made with, each once. */
export function instrumentsUsed(installation: Installation): InstrumentFact[] {
  const names = new Set<string>();
  for (const day of testDaysOf(installation)) for (const { value } of day.with) names.add(value);
  return [...names].flatMap((name) => installation.names.instruments.get(name)?.[0] ?? []);
}
