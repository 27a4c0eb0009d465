/** The way to a dead circuit, in the order it is done. Shown wherever a finding sends a person to open something. */
export const safeIsolation =
  "Before opening anything: isolate and lock off, prove the tester, prove dead, prove the tester again.";
