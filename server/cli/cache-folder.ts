/** Where caches of the person who runs the program lie: `WAYFILE_CACHE` if it is set, else where the system keeps such things. */
import { homedir, platform } from "node:os";
import { join } from "node:path";

export const folderOfCaches = (env: NodeJS.ProcessEnv): string =>
  env.WAYFILE_CACHE || join(systemFolder(env), "wayfile");

function systemFolder(env: NodeJS.ProcessEnv): string {
  if (env.XDG_CACHE_HOME) return env.XDG_CACHE_HOME;
  if (platform() === "win32" && env.LOCALAPPDATA) return env.LOCALAPPDATA;
  return platform() === "darwin" ? join(homedir(), "Library", "Caches") : join(homedir(), ".cache");
}
