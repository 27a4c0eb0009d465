/** What an inspection came to, and its observations. */
import type { Inspection, ObservationFact } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import { derivedOutcome } from "../../readings/inspection-outcome.ts";
import { isUsuallyGrave, notObserved } from "../../rules/frame/observation-checks.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { type Block, paragraph, table } from "../setting/document.ts";
import { placeText } from "./scope.ts";

export function outcomeBlocks(
  inspection: Inspection,
  { edition }: Installation,
  findings: readonly Finding[],
): Block[] {
  const unsettled = gravelyFound(findings);
  const derived = derivedOutcome(inspection, edition);
  const stated = inspection.facts.one("outcome")?.args;
  const outcome = stated?.of.value ?? derived.outcome;
  const differs = stated !== undefined && stated.of.value !== derived.outcome;
  const why = differs
    ? `; the codes alone come to ${derived.outcome}${stated.why ? `. Reason: ${stated.why.value}` : ""}`
    : "";
  const open = inspection.facts.all("observation").some(({ args }) => args.code.value === "FI");
  return [
    paragraph(
      `Outcome: ${outcome} for continued use, ${stated ? "by the signatory" : `by the codes of the observations (${derived.source.ref})`}${why}.`,
    ),
    ...(open && outcome === "satisfactory"
      ? [paragraph("Further investigation is still required without delay.")]
      : []),
    ...observationBlocks(inspection.facts.all("observation"), unsettled.length > 0),
    ...(unsettled.length === 0
      ? []
      : [
          {
            kind: "caution" as const,
            text: `Found in the schedules, and named by no observation: ${unsettled.join(" ")} Whether each is one, and its code, is for whoever signs to say before this is given out.`,
          },
        ]),
  ];
}

/** What is usually a C1 or C2 and stands in no observation, which the check of the observations lists. */
const gravelyFound = (findings: readonly Finding[]): string[] =>
  findings
    .filter(({ check }) => check === notObserved.id)
    .flatMap(({ related }) => related.map(({ message }) => message))
    .filter(isUsuallyGrave);

const actions: Readonly<Record<string, string>> = {
  C1: "danger present: make safe at once",
  C2: "potentially dangerous: urgent remedial action",
  C3: "improvement recommended",
  FI: "investigate without delay",
};

function observationBlocks(observations: readonly ObservationFact[], isUnsettled: boolean): Block[] {
  if (observations.length === 0)
    return [paragraph(`No observation was made${isUnsettled ? "" : ": nothing requires remedial action"}.`)];
  return table(
    ["No.", "Code", "Where", "Observation", "Action"],
    observations.map(({ args }, at) => [
      String(args.number?.value ?? at + 1),
      args.code.value,
      [placeText({ args }), ...(args.at ? [`at ${args.at.value}`] : [])].join(" "),
      [
        args.text.value,
        // A check's own name means nothing to who ordered the report.
        ...(args.rule && !args.rule.value.includes("/") ? [`(${args.rule.value})`] : []),
        ...(args.photo ?? []).map(({ value }) => `Photograph ${value}.`),
      ].join(" "),
      args.remedied
        ? `put right ${args.remedied.value}${args.by ? `: ${args.by.value}` : ""}`
        : (actions[args.code.value] ?? ""),
    ]),
  );
}
