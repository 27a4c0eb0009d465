/** A report as PDF: the same blocks as its other settings, black on white, without a browser. */
import { working } from "../calc/result.ts";
import {
  type Block,
  type Calculation,
  gapText,
  imprintText,
  judgementText,
  type Report,
  type Section,
  sourceText,
  verdictMarks,
} from "../reports/setting/document.ts";
import { drawGrid, gridToBegin } from "./pdf-grid.ts";
import {
  drawParticulars,
  drawSignatures,
  drawTable,
  particularsHeight,
  signatureHeight,
  tableToBegin,
} from "./pdf-tables.ts";
import { Sheet } from "./sheet.ts";
import { shown } from "./shown.ts";

export function pdfOf(report: Report): Promise<Uint8Array> {
  const { title, lead, sections, cautions, imprint, turned, close } = report;
  const sheet = new Sheet(turned !== undefined, title, imprint?.printed);
  sheet.flow(shown(title), { font: "bold", size: 14, after: 4 });
  for (const line of lead) sheet.flow(shown(line), { size: turned ? 7.5 : 9, grey: true, after: 2 });
  sheet.line(sheet.left, sheet.y + 1, sheet.width, 1);
  sheet.y += 8;
  sections.forEach((section, at) => {
    const wide = (section.turned ?? turned) !== undefined;
    if (wide !== sheet.isTurned) sheet.turn(wide);
    else if (at > 0 && section.level === 1 && close) apart(sheet);
    else if (at > 0 && section.level === 1) sheet.turn();
    drawSection(section, sheet);
  });
  if (cautions !== "") {
    sheet.y += 6;
    sheet.flow(shown(cautions), { size: 7.5, grey: true });
  }
  return sheet.finish(shown([title, ...(imprint ? [imprintText(imprint)] : [])].join(" · ")));
}

/** A paper that is set close goes on where it is, with room before a part and enough of the page left to begin it. */
function apart(sheet: Sheet): void {
  sheet.y += 8;
  sheet.need(Math.min(110, sheet.whole));
}

function drawSection({ level, title, blocks }: Section, sheet: Sheet): void {
  const size = level === 1 ? 11.5 : 9.5;
  // A heading keeps with what follows it.
  const begun = size * 1.5 + 9 + toBegin(blocks, sheet);
  sheet.need(begun > 70 && begun < sheet.whole / 2 ? begun : Math.min(70, sheet.whole));
  if (level === 2) sheet.y += 5;
  sheet.flow(shown(title), { font: "bold", size, after: 4 });
  for (const [at, block] of blocks.entries()) drawBlock(block, sheet, title, signedBelow(blocks.slice(at + 1), sheet));
}

/** How much of a page a table needs to begin below what introduces it; 0 where something else stands there. */
function toBegin([first, ...rest]: readonly Block[], sheet: Sheet): number {
  switch (first?.kind) {
    case "particulars":
      return particularsHeight(first, sheet) + toBegin(rest, sheet);
    case "paragraph":
      return sheet.heightOf(shown(first.text), sheet.width, body) + 3 + toBegin(rest, sheet);
    case "table":
      return tableToBegin(first, sheet);
    case "grid":
      return gridToBegin(first, sheet, signedBelow(rest, sheet));
    default:
      return 0;
  }
}

/** How high what stands below a block is, down to the names that sign for it; 0 where none do. */
function signedBelow(blocks: readonly Block[], sheet: Sheet): number {
  let height = 0;
  for (const block of blocks) {
    if (block.kind === "signatures") return height + signatureHeight * block.rows.length;
    if (block.kind !== "paragraph") return 0;
    height += sheet.heightOf(shown(block.text), sheet.width, body) + 3;
  }
  return 0;
}

const body = { size: 8.5 } as const;

function drawBlock(block: Block, sheet: Sheet, title: string, tail: number): void {
  switch (block.kind) {
    case "paragraph":
      return sheet.flow(shown(block.text), body);
    case "caution":
      return drawCaution(shown(block.text), sheet);
    case "table":
      return drawTable(block, sheet);
    case "grid":
      return drawGrid(block, sheet, title, tail);
    case "particulars":
      return drawParticulars(block, sheet);
    case "signatures":
      return drawSignatures(block, sheet);
    case "figure":
      return sheet.flow(shown(`${block.title}: ${block.description}`), { size: 8.5 });
    case "gap":
      return sheet.flow(shown(`? ${gapText(block)}`), { size: 8.5 });
    case "judgement":
      return sheet.flow(shown(`${verdictMarks[block.verdict]} ${judgementText(block)}`), {
        size: 8.5,
        font: block.verdict === "fails" ? "bold" : "plain",
        after: 1.5,
      });
    case "calculation":
      return drawCalculation(block, sheet);
  }
}

/** The source stands beside the figure where there is room for it, and below the steps where there is not. */
function drawCalculation({ name, result, steps, source }: Calculation, sheet: Sheet): void {
  const head = shown(result === "" ? name : `${name}: ${result}`);
  const from = source ? shown(sourceText(source)) : "";
  const [bold, grey] = [
    { size: 8.5, font: "bold" },
    { size: 7.5, grey: true },
  ] as const;
  sheet.need(24);
  const width = sheet.widthOf(from, grey);
  const beside = from !== "" && sheet.widthOf(head, bold) + 16 + width <= sheet.width;
  if (beside) sheet.put(from, { ...grey, x: sheet.left + sheet.width - width, y: sheet.y + 1, width: width + 1 });
  sheet.flow(head, { ...bold, after: 1 });
  drawSteps(
    steps.map((step) => shown(working([step]))),
    sheet,
  );
  if (from !== "" && !beside) sheet.flow(from, { ...grey, indent: 12 });
  else sheet.y += 2;
}

const stepLook = { size: 8 } as const;
const stepIndent = 12;

/** Several short steps stand in two columns, down the first and then down the second. */
function drawSteps(steps: readonly string[], sheet: Sheet): void {
  const half = (sheet.width - stepIndent) / 2;
  const rows = Math.ceil(steps.length / 2);
  const height = sheet.heightOf("x", half, stepLook) + 1;
  const fits = steps.length >= 4 && steps.every((text) => sheet.widthOf(text, stepLook) < half - stepIndent);
  if (!fits) {
    for (const text of steps) sheet.flow(text, { ...stepLook, indent: stepIndent, after: 1 });
    return;
  }
  sheet.need(rows * height);
  const { y } = sheet;
  for (const [at, text] of steps.entries())
    sheet.put(text, {
      ...stepLook,
      x: sheet.left + stepIndent + (at < rows ? 0 : half),
      y: y + (at % rows) * height,
      width: half,
    });
  sheet.y = y + rows * height;
}

function drawCaution(text: string, sheet: Sheet): void {
  const width = sheet.width - 16;
  const height = sheet.heightOf(text, width, { font: "bold", size: 8.5 });
  sheet.need(height + 14);
  sheet.frame(sheet.left, sheet.y, sheet.width, height + 10);
  sheet.put(text, { x: sheet.left + 8, y: sheet.y + 5, width, font: "bold", size: 8.5 });
  sheet.y += height + 16;
}
