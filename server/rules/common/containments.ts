import { squareMillimetres } from "../../calc/result.ts";
import { type ContainmentStudy, containmentsOf, containmentsOn } from "../../conduits/containment.ts";
import { factSpot, type InstallationRule, installationRule, type Related, type Reporter } from "../frame/rule.ts";

type Declaration = Omit<InstallationRule, "scope" | "check" | "checkBoard">;

/** A check that is put to every conduit and trunking: those of a board with the board, the others with the installation. */
export const containmentRule = (
  rule: Declaration & { readonly judge: (study: ContainmentStudy, report: Reporter) => void },
): InstallationRule => {
  const { judge, ...declaration } = rule;
  return installationRule({
    ...declaration,
    check(installation, report) {
      for (const study of containmentsOf(installation)) judge(study, report);
    },
    checkBoard(subject, report) {
      for (const study of containmentsOn(subject)) judge(study, report);
    },
  });
};

/** Every way in it, with what it brings. */
export const inIt = ({ name, contents }: ContainmentStudy): Related[] =>
  contents.map(({ study, route, cables, missing }) => ({
    spot: factSpot(route),
    message: `Way ${study.way.id} runs in ${name}${missing ? "" : `: ${cables.map(({ count, csa }) => `${count} × ${squareMillimetres(csa)}`).join(" and ")}`}.`,
  }));
