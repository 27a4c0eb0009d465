import { sourced } from "./source.ts";

/** The temperature of the air, averaged over a day, at which assemblies are rated, °C. */
export const busbarAmbient = sourced(35, "BS EN 61439-1, 7.1.1", "memory");
