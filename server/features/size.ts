/** A proposal of a device and a cable as a report: what was decided and why, what was ruled out, what is still open. */
import type { Proposal } from "../proposal/proposal.ts";
import { type Block, gap, paragraph, part, type Report, type Section, table } from "../reports/setting/document.ts";

/** `name` is the way as it is called: `Way A/3 “Kiln”`. */
export function sizeReport(
  name: string,
  { outcome, reasons, decisions, ruledOut, open, ...proposal }: Proposal,
): Report {
  const { device, cable, rcd } = proposal;
  const lines = [device, rcd, cable].filter((line) => line !== undefined);
  const result: Block[] =
    outcome === "fits"
      ? lines.map(paragraph)
      : [
          gap(
            "A device and a cable",
            outcome === "missing" ? `What is missing: ${reasons.join(" ")}` : reasons.join(" "),
          ),
        ];
  const sections: Section[] = [
    { level: 1, title: outcome === "fits" ? "Device and cable" : "Nothing is proposed", blocks: result },
    ...part(
      "How they were chosen",
      decisions.map(({ title, result: text, steps, source }) => ({
        kind: "calculation",
        name: title,
        result: text,
        steps,
        source,
      })),
    ),
    ...part(
      "Ruled out",
      table(
        ["candidate", "why"],
        ruledOut.map(({ candidate, why }) => [candidate, why]),
      ),
    ),
    ...part("Taken for granted, or not judged", open.map(paragraph)),
  ];
  return {
    title: `Size: ${name}`,
    lead: [],
    sections,
    cautions: "A proposal is a first size from what the way states. Whoever signs for the design checks it.",
  };
}
