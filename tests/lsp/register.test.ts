/** The register in the editor: every installation of the folders, opened or not, with what is typed and not saved. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { CancellationTokenSource, LSPErrorCodes } from "vscode-languageserver";
import { type RegisterAnswer, registerRequest } from "../../server/lsp/protocol.ts";
import { type Server, startServer } from "../helpers/server.ts";

const barn = (title: string, inspected: string): string => `wayfile 1
use "${inspected}meters.ways"

installation "${title}" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new

  supply {
    earthing  TN-S
    Ze        0.42 Ω
    Ipf       0.92 kA
  }

  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
  }
}
`;

const files = {
  "meters.ways": 'wayfile 1\ninstrument M1 "Multifunction tester" { due 2027-01-01 }\n',
  "lower barn/a(1).ways": barn("Lower | Barn", "../"),
  "upper.ways": barn("Upper Barn", "").replace("BS EN 60947-3 100 A", "BS EN 60947-3 hundred"),
};

let folder = "";
let server: Server;
const uriOf = (name: string): string => pathToFileURL(join(folder, name)).href;
const read = (): Promise<RegisterAnswer> => server.connection.sendRequest<RegisterAnswer>(registerRequest, {});

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "wayfile-register-"));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  server = await startServer({ folder: pathToFileURL(folder).href });
});

afterEach(() => {
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

test("every installation is listed with its schedule, the most urgent first, a shared file not", async () => {
  const { installations, day, left } = await read();
  expect({ day: /^\d{4}-\d\d-\d\d$/.test(day), left }).toEqual({ day: true, left: 0 });
  expect(installations.map(({ title, file, isFaulty }) => [title, file, isFaulty])).toEqual([
    ["Upper Barn", "upper.ways", true],
    ["Lower | Barn", "lower barn/a(1).ways", false],
  ]);
  expect(installations[0]?.uri).toBe(uriOf("upper.ways"));
  expect(installations[0]?.attention[0]).toBe("1 error");
  expect(installations[0]?.particulars).toContain("1 board, 0 ways");
});

test("what is typed and not saved counts, and what a schedule was in a revision is no installation", async () => {
  await server.open(uriOf("upper.ways"), barn("Upper Barn", ""));
  const past = uriOf("upper.ways").replace("file:", "wayfile-past:");
  await server.open(`${past}?${encodeURIComponent('{"revision":"HEAD"}')}`, files["upper.ways"]);
  const { installations } = await read();
  expect(installations.map(({ title, isFaulty }) => [title, isFaulty])).toEqual([
    ["Lower | Barn", false],
    ["Upper Barn", false],
  ]);
});

test("a text that was never saved stands beside the others, which keep their short names", async () => {
  await server.open("untitled:Untitled-1", files["upper.ways"].replace('use "meters.ways"\n', ""));
  const { installations } = await read();
  expect(installations.map(({ file }) => file).sort()).toEqual([
    "lower barn/a(1).ways",
    "untitled:Untitled-1",
    "upper.ways",
  ]);
});

test("it can be called off", async () => {
  const source = new CancellationTokenSource();
  const asked = server.connection.sendRequest<RegisterAnswer>(registerRequest, {}, source.token);
  source.cancel();
  await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
});
