/** The samples of the checks. What is shipped has them in a part of their own: only the page of a check shows them. */
import { pages } from "./catalogue.ts";
import type { Example } from "./rule.ts";

export const samplesOf = (check: string): readonly Example[] => pages.find(({ id }) => id === check)?.examples ?? [];
