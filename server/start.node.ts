/** Where the language server begins. */
import { startWithCompiled } from "./start.ts";

void startWithCompiled("./server/main.mjs");
