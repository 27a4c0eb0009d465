/** Who ordered the inspection, of what, and what is known of it. */
import type { Inspection, InspectionKind } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import type { FactOf } from "../../model/values.ts";
import { capital } from "../../text/words.ts";
import { written, writtenValue } from "../common/written.ts";
import { text } from "./scope.ts";

const orNot = (value: string): string => (value === "" ? "not stated" : value);

/** When what is inspected was installed, as its signatures state it: of the whole, else board by board. */
function whenInstalled({ head, boards }: Installation): string {
  const whole = head.facts.one("installed");
  if (whole) return dayOrYear(whole);
  const parts = boards.flatMap(({ board }) => {
    const own = board.head.facts.one("installed");
    const when = own ? dayOrYear(own) : "";
    return when === "" ? [] : [`board ${board.head.name} ${when}`];
  });
  return parts.join("; ");
}

const dayOrYear = (fact: FactOf<"installation" | "board", "installed">): string => {
  const { on, around } = fact.args;
  return on ? on.value : around ? writtenValue(fact, around) : "";
};

/** What is asked of an installation that stood there before; of new work it is shown where it is stated. */
const ofWhatWasThere: readonly string[] = ["Occupier", "Reason", "Wired", "Additions", "Records", "Last inspected"];

export function particulars(
  installation: Installation,
  kind: InspectionKind,
  inspection: Inspection | undefined,
): [string, string][] {
  const { head } = installation;
  const facts = inspection?.facts;
  const client = facts?.one("client")?.args;
  const rows: [string, string][] = [
    ["Reference", text(facts?.one("reference"))],
    ["Issued", facts?.one("issued")?.args.on.value ?? ""],
    ["Ordered by", [client?.name.value, client?.address?.value].filter(Boolean).join(", ")],
    ["Occupier", facts?.one("occupier")?.args.name.value ?? ""],
    ["Reason", text(facts?.one("reason"))],
    ["Address", head.facts.one("location")?.args.text.value ?? ""],
    ["Premises", head.facts.one("premises")?.args.premises.value ?? ""],
    ...(["wired", "additions", "records", "last-inspected"] as const).map((word): [string, string] => {
      const fact = facts?.one(word);
      const stated = fact ? written(fact).replace(/^(none|not)-(?=\p{L})/u, "$1 ") : "";
      return [
        capital(word.replace("-", " ")),
        stated === "" && word === "wired" && kind === "periodic" ? whenInstalled(installation) : stated,
      ];
    }),
  ];
  return rows
    .filter(([name, fact]) => fact !== "" || kind === "periodic" || !ofWhatWasThere.includes(name))
    .map(([name, fact]) => [name, orNot(fact)]);
}
