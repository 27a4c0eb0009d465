import type { Step } from "../../calc/result.ts";
import { citedIn } from "../../tables/cited.ts";
import type { Edition } from "../../tables/editions.ts";
import type { Source } from "../../tables/source.ts";
import type { Block, Report } from "./document.ts";

/** A report whose sources are cited as the edition it is made to numbers them; `short` where its head names the edition. */
export function citedReport(report: Report, edition: Edition | undefined, short = false): Report {
  const whole = citedIn(edition);
  const cite = short && edition ? (text: string) => whole(text).replaceAll(`${edition.id}, `, "BS 7671, ") : whole;
  return {
    ...report,
    sections: report.sections.map((section) => ({
      ...section,
      blocks: section.blocks.map((block) => citedBlock(block, cite)),
    })),
  };
}

function citedBlock(block: Block, cite: (text: string) => string): Block {
  switch (block.kind) {
    case "calculation":
      return {
        ...block,
        steps: block.steps.map((one) => citedStep(one, cite)),
        source: citedSource(block.source, cite),
      };
    case "judgement":
      return { ...block, remark: cite(block.remark), source: citedSource(block.source, cite) };
    case "paragraph":
      return { ...block, text: cite(block.text) };
    case "gap":
      return { ...block, why: cite(block.why) };
    case "particulars":
      return { ...block, rows: block.rows.map(([name, fact]) => [name, cite(fact)] as const) };
    case "table":
      return { ...block, rows: block.rows.map((row) => row.map(cite)) };
    default:
      return block;
  }
}

const citedSource = (source: Source | undefined, cite: (text: string) => string): Source | undefined =>
  source && { ...source, ref: cite(source.ref) };

const citedStep = (step: Step, cite: (text: string) => string): Step => ({
  ...step,
  formula: cite(step.formula),
  ...(step.from === undefined ? {} : { from: cite(step.from) }),
});
