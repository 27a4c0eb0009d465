/** A report, live: its words, tables and drawings in the few kinds that the page sets. */
import { working } from "../calc/result.ts";
import type { Drawing } from "../drawings/shapes.ts";
import { type Block, gapText, judgementText, type Report, sourceText } from "../reports/setting/document.ts";

export type ReportBlock =
  | {
      readonly kind: "words";
      readonly text: string;
      readonly tone: "plain" | "note" | "caution" | "holds" | "fails" | "unproven" | "advises";
    }
  | { readonly kind: "table"; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | {
      readonly kind: "calculation";
      readonly name: string;
      readonly result: string;
      readonly lines: readonly string[];
      readonly source: string;
    }
  | { readonly kind: "drawing"; readonly drawing: Drawing; readonly caption: string };

export interface ReportView {
  readonly kind: "report";
  readonly title: string;
  readonly lead: readonly string[];
  readonly sections: readonly {
    readonly level: 1 | 2;
    readonly title: string;
    readonly blocks: readonly ReportBlock[];
  }[];
  readonly cautions: string;
}

export const reportView = ({ title, lead, sections, cautions }: Report): ReportView => ({
  kind: "report",
  title,
  lead,
  sections: sections.map((one) => ({ level: one.level, title: one.title, blocks: one.blocks.map(blockOf) })),
  cautions,
});

const words = (text: string, tone: Extract<ReportBlock, { kind: "words" }>["tone"] = "plain"): ReportBlock => ({
  kind: "words",
  text,
  tone,
});

function blockOf(block: Block): ReportBlock {
  switch (block.kind) {
    case "paragraph":
      return words(block.text);
    case "gap":
      return words(gapText(block), "note");
    case "judgement":
      return words(judgementText(block), block.verdict);
    case "caution":
      return words(block.text, "caution");
    case "table":
      return block;
    case "calculation": {
      const { name, result, steps, source } = block;
      const lines = steps.map((one) => working([one]));
      return { kind: "calculation", name, result, lines, source: source ? sourceText(source) : "" };
    }
    case "figure":
      return { kind: "drawing", drawing: block.drawing, caption: block.caption };
    case "particulars":
      return { kind: "table", head: ["", ""], rows: block.rows };
    case "signatures":
      return {
        kind: "table",
        head: ["as", "name", "on"],
        rows: block.rows.map(({ role, name, on }) => [role, name, on]),
      };
    case "grid": {
      const columns = block.bands.flatMap((band) => band.columns);
      const head = columns.map(({ title, unit }) => (unit === "" ? title : `${title} (${unit})`));
      return { kind: "table", head, rows: block.rows.map((row) => row.map(({ text }) => text)) };
    }
  }
}
