/** A paper that leaves the house, in any of its formats. What needs a library is loaded when it is asked for. */
import type { Installation } from "../model/installation.ts";
import type { Fill, PaperFormat, PaperKind } from "../reports/common/paper-kinds.ts";
import { none } from "../reports/common/target.ts";
import { inspectionReport } from "../reports/inspection/inspection.ts";
import { scheduleOf } from "../reports/schedule/schedule.ts";
import { type ValueTable, valuesOf } from "../reports/schedule/values.ts";
import { type Imprint, type Report, together } from "../reports/setting/document.ts";
import { reportHtml } from "../reports/setting/html.ts";
import { reportMarkdown } from "../reports/setting/markdown.ts";
import { reportText } from "../reports/setting/text.ts";
import { csvOf } from "./csv.ts";
import { fillSheetHtml } from "./fill-sheet.ts";

const settings = { text: reportText, markdown: reportMarkdown, html: reportHtml } as const;

type Failure = { readonly failure: string };

interface PaperMakers {
  report(): Report | Failure;
  /** For tables of values; nothing where the paper is none. */
  values?(): ValueTable | Failure;
}

type Content = { readonly content: string | Uint8Array };

/** A paper in a format: text, markdown, html, pdf, and as a table xlsx or csv. */
export async function contentOf(
  format: PaperFormat,
  { report, values }: PaperMakers,
  imprint: Imprint,
): Promise<Content | Failure> {
  if (format === "csv" || format === "xlsx") {
    const table = values?.() ?? { failure: "This paper is no table: it cannot be written as one." };
    if ("failure" in table) return table;
    if (format === "csv") return { content: csvOf(table) };
    const { workbookOf } = await import("./tables.ts");
    return { content: await workbookOf(table, imprint) };
  }
  const made = report();
  if ("failure" in made) return made;
  const whole = { ...made, imprint };
  if (format !== "pdf") return { content: settings[format](whole) };
  const { pdfOf } = await import("./pdf.ts");
  return { content: await pdfOf(whole) };
}

interface PaperAsked {
  readonly paper: PaperKind;
  readonly format: PaperFormat;
  readonly fill?: Fill;
}

/** One of the papers of a schedule: its circuits and results, its latest inspection, or the sheet to fill in on site. */
export async function paperOf(
  { paper, format, fill = "filled" }: PaperAsked,
  installations: readonly Installation[],
  findings: () => Parameters<typeof inspectionReport>[1],
  imprint: Imprint & { readonly digest: string },
): Promise<Content | Failure> {
  const [installation] = installations;
  if (!installation) return none;
  switch (paper) {
    case "sheet":
      return { content: fillSheetHtml(installation, imprint.file, imprint.digest) };
    case "inspection":
      return await contentOf(format, { report: () => inspectionReport(installations, findings()) }, imprint);
    case "schedule": {
      const report = () => together(installations.map((one) => scheduleOf(one, { fill }))) ?? none;
      return await contentOf(format, { report, values: () => valuesOf(installation, { fill }) }, imprint);
    }
  }
}
