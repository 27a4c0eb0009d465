/** The page inside an editor. */
import { start } from "./app.tsx";
import type { FromPage, Host, ToPage } from "./messages.ts";

interface Editor {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: unknown): void;
}
declare const acquireVsCodeApi: () => Editor;

const editor = acquireVsCodeApi();
const host: Host = {
  send: (message) => editor.postMessage(message),
  receive: (take) => window.addEventListener("message", ({ data }: MessageEvent<ToPage>) => take(data)),
  load: () => editor.getState(),
  save: (state) => editor.setState(state),
};
const root = document.getElementById("app");
if (root) start(host, root);
