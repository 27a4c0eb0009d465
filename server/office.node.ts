/** Papers as files and readings that come back from files, on Node. */
import { basename } from "node:path";
import { changesOf, enteredReport } from "./entry/change.ts";
import { enter } from "./entry/enter.ts";
import { columnNames } from "./entry/table.ts";
import type { PaperOffice } from "./lsp/runtime.ts";
import { digestOf } from "./papers/digest.ts";
import { foreignIn, incomingOf } from "./papers/incoming.ts";
import { paperOf } from "./papers/paper.ts";
import { decode } from "./text/decode.ts";
import { nameOfUri } from "./workspace/uri.ts";
import { resultOf } from "./workspace/workspace.ts";

/** A file that came back from a meter or a colleague holds a few thousand readings at the most. */
const mostBytes = 20_000_000;

/** `pathOf` is the file an address is of, on this computer. */
export const officeWith = (pathOf: (uri: string) => string | undefined): PaperOffice => ({
  paper: async ({ uri, printed, ...asked }, snapshot) => {
    const file = pathOf(uri);
    const imprint = { file: file === undefined ? nameOfUri(uri) : basename(file), digest: digestOf(snapshot.files) };
    const stamped = printed === undefined ? imprint : { ...imprint, printed };
    const made = await paperOf(asked, snapshot.installations, () => resultOf(snapshot).findings, stamped);
    return "failure" in made ? made : { base64: Buffer.from(made.content).toString("base64") };
  },
  entered: async ({ name, base64, column = [], on }, { installations, files }) => {
    const [installation, ...others] = installations;
    if (!installation) return { failure: "There is no installation in this file to enter readings of." };
    if (others.length > 0)
      return { failure: "This file holds several installations: keep each in a file of its own to enter readings." };
    const bytes = Buffer.from(base64, "base64");
    if (bytes.length > mostBytes) return { failure: "The file of readings is too large." };
    const workbook = name.toLowerCase().endsWith(".xlsx");
    const text = workbook ? { text: "" } : decode(bytes);
    if ("failure" in text) return text;
    const outside = workbook ? { workbook: bytes } : text;
    const asks = await foreignIn(outside, installation, { column });
    if (asks.columns.length > 0)
      return {
        files: [],
        report: "",
        misfits: 0,
        asks: { columns: asks.columns, ours: columnNames, day: !asks.dated },
      };
    const read = await incomingOf(outside, installation, { column, ...(on === undefined ? {} : { on }) });
    if ("failure" in read) return { failure: `“${name}”: ${read.failure}` };
    const entered = enter(installation, read.incoming, {});
    const changes = changesOf(files, installation, entered);
    if ("failure" in changes) return changes;
    const changed = read.base !== undefined && read.base !== digestOf(files);
    const names = changes.files.map(({ file }) => nameOfUri(file.path));
    return {
      files: changes.files.map(({ file, segments }) => ({ path: file.path, document: file.document, segments })),
      report: `${changed ? "The schedule has changed since the worksheet was made of it.\n" : ""}${enteredReport(entered, read, names, false)}`,
      misfits: entered.misfits.length,
    };
  },
});
