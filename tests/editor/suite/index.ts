// What an extension host calls. The same source runs in the node host and in the web worker host, hence mocha's browser build and no node modules.
import type MochaClass from 'mocha';
import 'mocha/mocha.js';

const { Mocha } = globalThis as unknown as { Mocha: typeof MochaClass };

/** Settles when the suite has run; rejects when a test failed. */
export async function run(): Promise<void> {
  // How fast something is, the bench tells; a busy machine is no failure.
  const mocha = new Mocha({ ui: 'bdd', reporter: 'base', timeout: 60_000, forbidOnly: true, forbidPending: true });
  mocha.suite.emit('pre-require', globalThis, '', mocha);
  await import('./all.ts');
  const failures = await new Promise<number>((resolve) => {
    const runner = mocha.run(resolve);
    runner.on('pass', (test) => say(`  passed  ${test.fullTitle()}`));
    runner.on('fail', (test, error: unknown) => say(`  FAILED  ${test.fullTitle()}\n${error instanceof Error ? error.stack ?? error.message : String(error)}`));
    runner.on('end', () => say(`${runner.stats?.passes ?? 0} passed, ${runner.stats?.failures ?? 0} failed`));
  });
  if (failures > 0) throw new Error(`${failures} tests failed`);
}

/** A mark tells the suite's lines from what else an extension host prints. */
function say(line: string): void {
  console.log(`::suite:: ${line}`);
}
