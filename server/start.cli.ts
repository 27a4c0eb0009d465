/** Where the command line begins. */
import { startWithCompiled } from "./start.ts";

void startWithCompiled("./wayfile/main.mjs");
