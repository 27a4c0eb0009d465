/** The language server in a world where time runs so fast that every check takes long. */
import "../../server/main.node.ts";

const now = performance.now.bind(performance);
performance.now = () => now() * 100_000;
