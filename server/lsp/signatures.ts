import type { ClientCapabilities, ServerCapabilities, SignatureHelp } from "vscode-languageserver";
import { signatureAt } from "../features/signature.ts";
import type { Service } from "./service.ts";

/** Help for the arguments of a line. It comes when it is called: beside the list of choices a second one would be noise. */
export function signatures({ connection, ask, cursor }: Service, client: ClientCapabilities): ServerCapabilities {
  const offsets = client.textDocument?.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport;
  connection.onSignatureHelp(
    ask("textDocument/signatureHelp", null, (snapshot, { position }): SignatureHelp | null => {
      const found = signatureAt(snapshot, cursor(snapshot, position));
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
    }),
  );
  return { signatureHelpProvider: { triggerCharacters: [], retriggerCharacters: [" "] } };
}
