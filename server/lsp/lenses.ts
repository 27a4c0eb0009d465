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
 * is being written has none until it is left, so that no line moves under the cursor; one that had says what it said
 * until the typing rests.
 */
export function lenses(
  { connection, ask }: Service,
  delivery: Delivery,
  client: ClientCapabilities,
  command: string | undefined,
): ServerCapabilities {
  if (command === undefined || !client.textDocument?.codeLens) return {};
  /** What each line of a file says, by what it is of; nothing until an editor has shown it. */
  const shown = new Map<string, Map<string, string | undefined>>();
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
      shown.set(uri, new Map(places.map(({ reference }) => [reference, before?.get(reference)])));
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
      const [said, of] = [shown.get(uri), at(lens.data, "of")];
      const before = typeof of === "string" ? said?.get(of) : undefined;
      const isTyped = place !== undefined && delivery.calm.isTyping(snapshot, place.segment);
      const text = isTyped && before !== undefined ? before : place && lensText(snapshot, place);
      if (typeof of === "string") said?.set(of, text);
      // An editor leaves out a lens without a command, and its line with it: so there is always something to show.
      return {
        ...lens,
        command: { title: text ?? "…", command, arguments: [{ uri, of }] },
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
