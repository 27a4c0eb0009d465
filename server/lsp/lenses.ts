import type { ClientCapabilities, CodeLens, CodeLensParams, ServerCapabilities } from "vscode-languageserver";
import { lensPlaces, lensText } from "../features/lenses.ts";
import type { Delivery } from "./delivery.ts";
import { at } from "./member.ts";
import { findings, type Service } from "./service.ts";

interface About {
  readonly textDocument: { readonly uri: string };
  readonly lens: CodeLens;
}

/**
 * Lines above boards and ways. Where they stand is answered at once, what they say when an editor shows one. A way that
 * is being written has none until it is left, so that no line moves under the cursor.
 */
export function lenses(
  { connection, ask }: Service,
  delivery: Delivery,
  client: ClientCapabilities,
  command: string | undefined,
): ServerCapabilities {
  if (command === undefined || !client.textDocument?.codeLens) return {};
  const shown = new Map<string, ReadonlySet<string>>();
  connection.onCodeLens(
    ask("textDocument/codeLens", [], (snapshot, { textDocument: { uri } }: CodeLensParams): CodeLens[] => {
      const mode = delivery.shown(uri).lens;
      const before = shown.get(uri);
      const places = lensPlaces(snapshot).filter(
        ({ segment, reference }) =>
          mode !== "off" &&
          (mode === "ways" || !reference.includes("/")) &&
          (!before || before.has(reference) || !delivery.calm.isWriting(snapshot, segment)),
      );
      shown.set(uri, new Set(places.map(({ reference }) => reference)));
      return places.map(({ segment, offset, reference }) => {
        const start = snapshot.positions.place(segment, offset);
        return { range: { start, end: start }, data: { uri, of: reference } };
      });
    }),
  );
  const resolve = ask<About, CodeLens | undefined>(
    "codeLens/resolve",
    undefined,
    (snapshot, { textDocument: { uri }, lens }) => {
      const place = snapshot.positions.at(lens.range.start);
      const text = place && lensText(snapshot, place);
      // An editor leaves out a lens without a command, and its line with it: so there is always something to show.
      return {
        ...lens,
        command: { title: text ?? "…", command, arguments: [{ uri, of: at(lens.data, "of") }] },
      };
    },
    findings,
  );
  connection.onCodeLensResolve(async (lens, token) => {
    const uri = at(lens.data, "uri");
    const resolved = typeof uri === "string" ? await resolve({ textDocument: { uri }, lens }, token) : undefined;
    return resolved ?? lens;
  });
  if (client.workspace?.codeLens?.refreshSupport)
    delivery.onCalm(() => void connection.sendRequest("workspace/codeLens/refresh").catch(() => undefined));
  return { codeLensProvider: { resolveProvider: true } };
}
