/** Where the language server begins. */
import { startWithCompiled } from "./start.ts";

declare const contentOfServer: string;

startWithCompiled("./server/main.cjs", contentOfServer, true);
