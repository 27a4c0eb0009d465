/** Where the language server begins. */
import { startWithCompiled } from "./start.ts";

startWithCompiled("./server-main.cjs");
