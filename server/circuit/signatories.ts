import type { Way } from "../model/file.ts";
import { inspectionFor, inspectionsOf, isOlder } from "../model/inspections.ts";
import type { Context } from "../model/installation.ts";
import type { FactOf, Facts } from "../model/values.ts";

type SignatureWord = "designed" | "installed" | "tested";

/** Who signed for a way, and when: the nearest signature counts. */
export function signatoryOf(
  signed: SignatureWord,
  way: Facts<"way"> | undefined,
  context: Context,
): FactOf<"way", SignatureWord> | undefined {
  return way?.one(signed) ?? context.board.facts.one(signed) ?? context.installation.facts.one(signed);
}

/** A block of tests as far as it says who made it, and when. */
interface TestHeader {
  readonly args: { readonly on?: { readonly value: string }; readonly by?: { readonly value: string } };
}

/**
 * Who answers for a block of tests: whom it names, else who signed the inspection it belongs to, else the nearest
 * signature, unless the tests are of another time than that.
 */
export function testerOf({ args: { on, by } }: TestHeader, way: Way | undefined, context: Context): string | undefined {
  if (by) return by.value;
  const inspections = inspectionsOf(context.installation);
  const day = on?.value ?? "";
  const circuit = { board: context.board, way: way ?? { id: "" } };
  const inspection = inspectionFor(inspections, day, circuit);
  const own = inspection?.facts.one("tested");
  if (own) return own.args.by.value;
  const nearest = signatoryOf("tested", way?.facts, context);
  const signed = nearest?.args.on?.value;
  if (!nearest || signed === undefined)
    return inspections.length > 0 && !inspection ? undefined : nearest?.args.by.value;
  const sameTime = inspectionFor(inspections, signed, circuit) === inspection;
  return sameTime && !isOlder(day, signed) ? nearest.args.by.value : undefined;
}
