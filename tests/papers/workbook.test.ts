/** A workbook from outside: a small file that is meant to become a large one is refused before it does. */
import { type Zippable, zipSync } from "fflate";
import { describe, expect, it, vi } from "vitest";
import { tableOfWorkbook } from "../../server/papers/read-workbook.ts";
import { workbookOf } from "../../server/papers/workbook.ts";
import type { ValueTable } from "../../server/reports/schedule/values.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

const cell = (at: string, text: string): string => `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`;
const head = `<row r="1">${cell("A1", "way")}${cell("B1", "Zs")}</row><row r="2">${cell("A2", "1")}${cell("B2", "0.44")}</row>`;

const relationships = (type: string, target: string): string =>
  `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}" Target="${target}"/></Relationships>`;

function workbook(rows: string, { name = "sheet1.xml", before = "", others = {} as Zippable } = {}): Uint8Array {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  return zipSync({
    "_rels/.rels": bytes(relationships("officeDocument", "xl/workbook.xml")),
    "xl/_rels/workbook.xml.rels": bytes(relationships("worksheet", `worksheets/${name}`)),
    "xl/workbook.xml": bytes(
      `<?xml version="1.0"?><workbook xmlns="${main}" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    ),
    [`xl/worksheets/${name}`]: bytes(
      `<?xml version="1.0"?>${before}<worksheet xmlns="${main}"><sheetData>${head}${rows}</sheetData></worksheet>`,
    ),
    ...others,
  });
}

const unreadable = { failure: "It cannot be read as a workbook (.xlsx)." };
const tooLarge = { failure: "It is too large for a table of readings." };
const tooFar = { failure: expect.stringContaining("delete the empty rows and columns at its end") };

describe("a workbook from outside", () => {
  it("is read by its first sheet", async () => {
    const table = await tableOfWorkbook(workbook("", { others: { "xl/media/logo.png": new Uint8Array(3_000_000) } }));
    expect(table).toEqual({
      head: { line: 1, cells: ["way", "Zs"] },
      rows: [{ line: 2, cells: ["1", "0.44"] }],
    });
  });

  it.each<[string, string, object]>([
    ["a cell in the last row and column", `<row r="1048576">${cell("XFD1048576", "x")}</row>`, tooFar],
    ["one beyond", `<row r="3">${cell("ZZZZZZ99999999999", "x")}</row>`, tooFar],
    ["one behind an attribute with an angle", `<row r="3"><c t=">" r="XFD1048576"><v>1</v></c></row>`, tooFar],
    ["an address behind signs of XML", `<row r="3"><c r="&#88;FD1048576"><v>1</v></c></row>`, unreadable],
    ["an address that is a word of the program", `<row r="3"><c r="__proto__3"><v>1</v></c></row>`, unreadable],
    ["a text of forty million blanks", `<row r="3">${cell("A3", " ".repeat(40_000_000))}</row>`, tooLarge],
    ["a million rows", `${"<row/>".repeat(1_000_000)}`, tooFar],
    ["cells within cells", `<row r="3">${"<c>".repeat(200_000)}`, unreadable],
  ])("with %s is refused", async (_, rows, answer) => {
    expect(await tableOfWorkbook(workbook(rows))).toEqual(answer);
  });

  it("is looked at by whatever name its sheet has", async () => {
    const rows = `<row r="1048576">${cell("XFD1048576", "x")}</row>`;
    expect(await tableOfWorkbook(workbook(rows, { name: "data.xml" }))).toEqual(tooFar);
  });

  it("means its entities as they are written", async () => {
    const before = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>';
    const table = await tableOfWorkbook(workbook(`<row r="3">${cell("A3", "&b;")}</row>`, { before }));
    expect(table).toEqual({
      head: { line: 1, cells: ["way", "Zs"] },
      rows: [
        { line: 2, cells: ["1", "0.44"] },
        { line: 3, cells: ["&b;", ""] },
      ],
    });
  });

  it("that states more parts than it has is no workbook", async () => {
    const whole = workbook("");
    const end = whole.length - 22;
    const parts = new DataView(whole.buffer, whole.byteOffset);
    parts.setUint16(end + 8, 65_000, true);
    parts.setUint16(end + 10, 65_000, true);
    expect(await tableOfWorkbook(whole)).toEqual(unreadable);
    expect(await tableOfWorkbook(bytes("PK"))).toEqual(unreadable);
    expect(await tableOfWorkbook(new Uint8Array())).toEqual(unreadable);
  });
});

it("a workbook of ours is the same file whenever it is written", async () => {
  const table: ValueTable = { columns: [{ key: "way", unit: "" }], rows: [["1"]] } as never;
  const imprint = { file: "a.ways" };
  vi.useFakeTimers({ toFake: ["Date"], now: new Date(2026, 4, 4, 10, 0, 0) });
  try {
    const first = await workbookOf(table, imprint);
    vi.setSystemTime(new Date(2027, 6, 5, 11, 30, 10));
    expect(await workbookOf(table, imprint)).toEqual(first);
    expect(await tableOfWorkbook(first)).toMatchObject({ rows: [{ cells: ["1"] }] });
  } finally {
    vi.useRealTimers();
  }
});

it("a workbook of ours holds what a cell can hold, as it is written", async () => {
  const texts = ["_x0041_", "x".repeat(40_000), `${"y".repeat(32_765)}\u{1f50c}\u{1f50c}`, "=1+1", "\ud800\u0001"];
  const columns = texts.map((_, at) => ({ key: `c${at}`, unit: "" }));
  const bytes = await workbookOf({ columns, rows: [texts] } as unknown as ValueTable, { file: "a.ways" });
  const read = await tableOfWorkbook(bytes);
  expect(read).toEqual({
    head: { line: 1, cells: ["c0", "c1", "c2", "c3", "c4"] },
    rows: [{ line: 2, cells: ["_x0041_", `${"x".repeat(32_766)}…`, `${"y".repeat(32_765)}…`, "=1+1", ""] }],
  });
});
