/** Why each check matters. What is shipped has it in a part of its own: no finding waits for it. */
import { pageOf } from "./catalogue.ts";

export const reasonOf = (check: string): string => pageOf(check)?.why ?? "";
