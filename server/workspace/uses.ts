/** What is kept of a file that is not open: enough to know whose findings it may change. */
export interface UseSummary {
  readonly uses: readonly string[];
  readonly hasInstallation: boolean;
}

const useLine = /^[ \t\ufeff]*use[ \t]+"((?:[^"\\\r\n]|\\["\\])*)"/gm;
const installationLine = /^[ \t\ufeff]*installation\b/m;

/** Read by lines and not by the grammar: a folder of schedules is looked through before anyone opens one. */
export function useSummary(text: string, resolve: (use: string) => string): UseSummary {
  const uses = [...text.matchAll(useLine)].map(([, path = ""]) => resolve(path.replace(/\\(["\\])/g, "$1")));
  return { uses, hasInstallation: installationLine.test(text) };
}
