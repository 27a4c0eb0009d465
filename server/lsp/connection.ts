import { type ConnectionOptions, LSPErrorCodes } from "vscode-languageserver";

/** A request that is called off while it still waits its turn is answered at once and never worked on. */
export const connectionOptions: ConnectionOptions = {
  connectionStrategy: {
    cancelUndispatched: () => ({
      jsonrpc: "2.0",
      id: null,
      error: { code: LSPErrorCodes.RequestCancelled, message: "Called off." },
    }),
  },
};
