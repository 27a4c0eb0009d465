import { writeFileSync } from "node:fs";

/**
 * Runs named checks and prints a line for each, then `N passed, N failed`, which goes as JSON to
 * $WAYFILE_TESTS_RESULT too, if set. A failed one ends the process with 1. Returns how many failed.
 */
export function verdict(checks) {
  let passed = 0;
  let failed = 0;
  for (const [name, check] of Object.entries(checks)) {
    try {
      check();
      passed++;
      console.log(`  ✔ ${name}`);
    } catch (failure) {
      failed++;
      console.log(`  ✘ ${name}\n${String(failure.message ?? failure).replace(/^/gm, "      ")}`);
    }
  }
  console.log(`${passed} passed, ${failed} failed`);
  const { WAYFILE_TESTS_RESULT: result } = process.env;
  if (result) writeFileSync(result, JSON.stringify({ passed, failed }));
  process.exitCode = failed > 0 ? 1 : 0;
  return failed;
}
