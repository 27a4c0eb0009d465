import type { ClientCapabilities } from "vscode-languageserver";

/** What an editor may do, so that every feature is registered. */
export const everything: ClientCapabilities = {
  textDocument: {
    diagnostic: {},
    semanticTokens: { requests: { full: { delta: true } }, tokenTypes: [], tokenModifiers: [], formats: ["relative"] },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
    rename: { prepareSupport: true },
    codeLens: {},
  },
  workspace: { diagnostics: { refreshSupport: true }, workspaceFolders: true },
};
