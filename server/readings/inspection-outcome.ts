/** The outcome that the observations of an inspection come to, by the edition it is made to. */
import type { Inspection, ObservationFact } from "../model/inspections.ts";
import type { Edition } from "../tables/editions.ts";
import type { Source } from "../tables/source.ts";
import { quotedIn } from "../tables/source.ts";

interface DerivedOutcome {
  readonly outcome: "satisfactory" | "unsatisfactory";
  /** The observations that make it unsatisfactory; none where it is satisfactory. */
  readonly by: readonly ObservationFact[];
  /** Whether the edition settles it; further investigation alone is judged by practice. */
  readonly certain: boolean;
  readonly source: Source;
}

const byCodes: Source = quotedIn("Appendix 6, condition report");
/** What the codes come to. What was put right since changes no report: it stays as it was issued. */
export function derivedOutcome({ facts }: Inspection, edition: Edition | undefined): DerivedOutcome {
  const all = facts.all("observation");
  const grave = all.filter(({ args }) => args.code.value === "C1" || args.code.value === "C2");
  if (grave.length > 0) return { outcome: "unsatisfactory", by: grave, certain: true, source: byCodes };
  const open = all.filter(({ args }) => args.code.value === "FI");
  if (open.length === 0) return { outcome: "satisfactory", by: [], certain: true, source: byCodes };
  const source = edition?.sources.investigation ?? byCodes;
  return edition && !edition.investigationFails
    ? { outcome: "satisfactory", by: [], certain: false, source }
    : { outcome: "unsatisfactory", by: open, certain: false, source };
}
