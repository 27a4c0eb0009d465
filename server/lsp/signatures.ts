import type { ClientCapabilities, ServerCapabilities, SignatureHelp } from "vscode-languageserver";
import { Part } from "./part.ts";
import type { Service } from "./service.ts";

/** Help for the arguments of a line. It comes when it is called: beside the list of choices a second one would be noise. */
export function signatures({ connection, ask, cursor }: Service, client: ClientCapabilities): ServerCapabilities {
  const offsets = client.textDocument?.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport;
  const part = new Part(() => import("../features/signature.ts"));
  connection.onSignatureHelp(
    ask(
      "textDocument/signatureHelp",
      null,
      (snapshot, { position }): SignatureHelp | null => {
        const found = part.now.signatureAt(snapshot, cursor(snapshot, position));
        if (!found) return null;
        const { label, means, parameters, active } = found;
        return {
          signatures: [
            {
              label,
              documentation: means,
              parameters: parameters.map(({ from, to, help }) => ({
                label: offsets ? [from, to] : label.slice(from, to),
                documentation: help,
              })),
            },
          ],
          activeSignature: 0,
          activeParameter: active,
        };
      },
      { part },
    ),
  );
  return { signatureHelpProvider: { triggerCharacters: [], retriggerCharacters: [" "] } };
}
