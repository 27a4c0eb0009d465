import type { ClientCapabilities, InlayHint, InlayHintParams, ServerCapabilities } from "vscode-languageserver";
import { inlayHints } from "../features/inlay.ts";
import { rangeOf, touching } from "./convert.ts";
import type { Delivery } from "./delivery.ts";
import type { Service } from "./service.ts";

/** Hints beside the lines an editor shows. A change of the setting asks it to show them again. */
export function inlay(
  { connection, ask }: Service,
  delivery: Delivery,
  client: ClientCapabilities,
): ServerCapabilities {
  connection.languages.inlayHint.on(
    ask("textDocument/inlayHint", [], (snapshot, { textDocument: { uri }, range }: InlayHintParams): InlayHint[] => {
      const { positions } = snapshot;
      const isShown = (segment: Parameters<typeof positions.place>[0]): boolean =>
        touching(rangeOf(positions, { segment, start: 0, end: segment.text.length }), range);
      return inlayHints(snapshot, delivery.shown(uri).inlay, isShown).map(
        ({ segment, offset, text, tooltip, isOver }) => ({
          position: positions.place(segment, offset),
          label: text,
          paddingLeft: true,
          ...(tooltip === "" ? {} : { tooltip }),
          ...(isOver ? { data: { isOver } } : {}),
        }),
      );
    }),
  );
  if (client.workspace?.inlayHint?.refreshSupport) {
    delivery.onInlay(() => void connection.languages.inlayHint.refresh().catch(() => undefined));
  }
  return { inlayHintProvider: true };
}
