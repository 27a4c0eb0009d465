/** Images in a hover: for editors that say they show them, since others would show their letters. */
import { afterEach, expect, it } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver/node";
import { type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/mill.ways";
const running: Server[] = [];
const mill = `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from supply
    containment C1 conduit 25 mm length 2 m
    way 1 radial "Saw" {
      cable  singles line 2.5 mm² cpc 2.5 mm²
      route  method B in C1
    }
  }
}
`;

afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

it.each([
  [{ pictures: true }, true],
  [{}, false],
  [undefined, false],
])("%j: %s", async (initializationOptions, shown) => {
  const server = await startServer({ initializationOptions });
  running.push(server);
  await server.open(uri, mill);
  const hover = await server.connection.sendRequest<Hover>("textDocument/hover", {
    textDocument: { uri },
    position: { line: 4, character: 8 },
  });
  const { value } = hover.contents as MarkupContent;
  expect(value).toContain("full");
  expect(value.includes("](data:image/svg+xml,")).toBe(shown);
});
