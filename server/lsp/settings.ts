/** What the client's user has chosen. */
import { DidChangeConfigurationNotification, type ClientCapabilities, type Connection } from 'vscode-languageserver';
import { ALL_HINTS, type HintKinds } from '../features/hint-kinds.ts';

const SECTION = 'platewright.hints';

export class Settings {
  private hints: Promise<HintKinds> = Promise.resolve(ALL_HINTS);

  constructor(private readonly connection: Connection, private readonly can: () => ClientCapabilities) {}

  /** Which hints are wanted now. */
  wanted(): Promise<HintKinds> { return this.hints; }

  /** Asks for the settings, and to be told of changes. `changed` is called behind each change. */
  begin(changed: () => void): void {
    const { workspace } = this.can();
    if (workspace?.configuration === true) this.ask();
    if (workspace?.didChangeConfiguration?.dynamicRegistration === true) void this.connection.client.register(DidChangeConfigurationNotification.type, { section: SECTION });
    this.connection.onDidChangeConfiguration(params => {
      const told = (params as { settings?: { platewright?: { hints?: unknown } | null } | null } | null)?.settings?.platewright?.hints;
      if (workspace?.configuration === true) this.ask();
      else this.hints = Promise.resolve(chosen(told));
      changed();
    });
  }

  private ask(): void {
    this.hints = this.connection.workspace.getConfiguration(SECTION).then(chosen, () => ALL_HINTS);
  }
}

/** What is not said to be unwanted is shown. */
function chosen(settings: unknown): HintKinds {
  const said = (typeof settings === 'object' ? settings : null) as Record<string, unknown> | null;
  const wants = (kind: keyof HintKinds): boolean => said?.[kind] !== false;
  return { legLengths: wants('legLengths'), armTotals: wants('armTotals'), mismatch: wants('mismatch'), found: wants('found') };
}
