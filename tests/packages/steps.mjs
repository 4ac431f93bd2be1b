// Steps of a run that is no vitest's: each is told, and counted in a last line `N passed, N failed`.
let passed = 0, failed = 0;

/** One that fails is told with its reason; those behind it are tried all the same. */
export async function step(name, run) {
  try {
    await run();
    passed++;
    console.log(`  passed  ${name}`);
  } catch (error) {
    failed++;
    console.log(`  FAILED  ${name}\n${error instanceof Error ? error.stack : error}`);
  }
}

/** Ends the process with 1 where a step failed, or where there was none. */
export function end(name) {
  console.log(`${name}${passed} passed, ${failed} failed`);
  process.exit(failed > 0 || passed === 0 ? 1 : 0);
}
