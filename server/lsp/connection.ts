import { type ConnectionOptions, LSPErrorCodes, Message, type RequestMessage } from "vscode-languageserver";
import { Gate, type Refusal } from "./gate.ts";

/** What a refused request is handed on as: its answer is the reason. */
export const refusedRequest = "wayfile/refused";

/**
 * How one connection deals with its messages. A request that is called off while it still waits its turn is answered at
 * once and never worked on; one that the gate refuses is answered with the reason; a notification is passed over.
 */
export function connectionOptions(): ConnectionOptions {
  const gate = new Gate();
  return {
    connectionStrategy: {
      cancelUndispatched: () => ({
        jsonrpc: "2.0",
        id: null,
        error: { code: LSPErrorCodes.RequestCancelled, message: "Called off." },
      }),
    },
    messageStrategy: {
      handleMessage: async (message, next) => {
        const refused = gate.judge(message);
        if (!refused) await next(message);
        else if (Message.isRequest(message)) await next(asRefused(message, refused));
      },
    },
  };
}

const asRefused = (message: RequestMessage, { code, message: reason }: Refusal): RequestMessage => ({
  ...message,
  method: refusedRequest,
  params: { code, message: reason },
});
