/** Where the command line begins, and each of its threads. */
import { isMainThread } from "node:worker_threads";
import { startWithCompiled } from "./start.ts";

declare const contentOfWayfile: string;

startWithCompiled("./wayfile/main.cjs", contentOfWayfile, isMainThread);
