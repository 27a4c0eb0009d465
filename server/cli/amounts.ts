import { figure } from "../calc/figure.ts";
import type { Amount } from "../rules/frame/rule.ts";

/** An amount as the trade writes it; `beside` is what it is compared with, so that both get the same prefix. */
export const amountText = ({ amount, unit, which }: Amount, beside: Amount = { amount, unit }): string =>
  `${figure(amount, unit, beside.unit === unit ? beside.amount : amount)}${which ? ` ${which}` : ""}`;
