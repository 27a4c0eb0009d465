/** Where the command line begins. */
import { startWithCompiled } from "./start.ts";

startWithCompiled("./wayfile-main.cjs");
