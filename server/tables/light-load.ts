import { sourced } from "./source.ts";

/**
 * Of what a cable may carry in its group, the share up to which it is left out of the count of the others. Quoted on:
 * - Textbook to the 17th Edition: rating factors of groups
 */
export const lightLoad = sourced(0.3, "BS 7671:2018+A2:2022, 523.5", "quoted");
